using NodaTime;

namespace RackController.Service.Tests;

public sealed class WallTrustTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 6, 1, 12, 0);

    private bool vouched = true;

    [Fact]
    public void AClockThatIsVouchedForIsTrustedFromTheLastTimeInTheJournalOn()
    {
        var trust = new WallTrust(Noon, () => vouched);

        Assert.True(trust.IsTrusted(Noon));
        Assert.False(trust.IsTrusted(Noon - Duration.FromSeconds(1)));
    }

    [Fact]
    public void AClockFromBeforeTheProgramWasWrittenIsNotTrusted()
    {
        var trust = new WallTrust(floor: null, () => vouched);

        Assert.True(trust.IsTrusted(Noon));
        Assert.False(trust.IsTrusted(Instant.FromUtc(1970, 1, 1, 0, 5)));
    }

    [Fact]
    public void AClockIsTrustedOnceALookFindsItVouchedForAndNoLongerThanThat()
    {
        vouched = false;
        var trust = new WallTrust(Noon, () => vouched);
        Assert.False(trust.IsTrusted(Noon));

        vouched = true;
        Assert.False(trust.IsTrusted(Noon));
        trust.LookAgain();
        Assert.True(trust.IsTrusted(Noon));

        vouched = false;
        trust.LookAgain();
        Assert.False(trust.IsTrusted(Noon));
    }
}
