using NodaTime;
using RackController.Testing;

namespace RackController.Bench.Tests.Foretelling;

public sealed class WeekAheadTests
{
    private static readonly Instant now = Instant.FromUtc(2026, 6, 1, 16, 0);

    // Lit 06:00 to 22:00 and flooded three times a day; 80 W of light for 16 h, 12 W of fan and 5 W of aerator all day.
    [Fact]
    public void AWeekComesToWhatTheScheduleSays()
    {
        var site = Sites.OneRack();
        var shares = new List<double>();

        var week = WeekAhead.Of(site, now, shares.Add);

        Assert.Equal(3, Assert.Single(week.Racks).FloodsPerDay);
        Assert.All(week.Tiers, tier => Assert.Equal(16, tier.LitHoursPerDay, 1));
        Assert.All(week.Racks, rack => Assert.Equal(0, rack.SpilledL));
        Assert.Empty(week.Hazards);
        var leastKWh = 7 * ((2 * 80 * 16) + (12 * 24) + (5 * 24)) / 1000.0;
        Assert.InRange(Assert.Single(week.Circuits).EnergyKWh, leastKWh, leastKWh * 1.1);
        Assert.InRange(week.Circuits[0].PeakA, 1.5, site.Circuits[0].ContinuousLimitA);
        Assert.Equal(1, shares[^1]);
    }

    [Fact]
    public void WhoeverGivesUpEndsIt() => Assert.Throws<OperationCanceledException>(
        () => WeekAhead.Of(Sites.OneRack(), now, share => throw new OperationCanceledException()));
}
