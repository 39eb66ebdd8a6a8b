using NodaTime;
using RackController.Control;
using RackController.Verbs;

namespace RackController.Cli.Tests.Verbs;

public sealed class ProofTestWordsTests
{
    private static readonly ProofTestStatus test = new(
        "north/leak rope", ProofTestKind.LeakRope, Duration.FromDays(90), PassedAt: null, Instant.FromUtc(2026, 6, 1, 0, 0), false, false);

    [Fact]
    public void ALastPassIsADateInTheZoneOfTheSite() => Assert.Equal(
        "1 Jun 2026", ProofTestWords.LastPass(
            test with { PassedAt = Instant.FromUtc(2026, 5, 31, 23, 30) }, DateTimeZoneProviders.Tzdb["Europe/London"]));

    [Fact]
    public void AFailureCountsForMoreThanAnEarlierPass() => Assert.Equal(
        "failed", ProofTestWords.LastPass(test with { PassedAt = Instant.FromUtc(2026, 5, 1, 0, 0), HasFailed = true }, DateTimeZone.Utc));

    [Fact]
    public void EveryKindHasItsOwnWords() => Assert.Equal(
        Enum.GetValues<ProofTestKind>().Length, Enum.GetValues<ProofTestKind>().Select(kind => kind.InWords()).Distinct().Count());
}
