using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Admission;

public class AdmissionWordsTests
{
    private static readonly ClockFace noon =
        new(new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 12, 0), WallTrusted: true), DateTimeZone.Utc);

    [Fact]
    public void EveryOutcomeHasWordsOfItsOwn()
    {
        var words = Enum.GetValues<AdmissionOutcome>().Select(Words).ToList();
        Assert.DoesNotContain(words, string.IsNullOrWhiteSpace);
        Assert.Equal(words.Count, words.Distinct().Count());
    }

    [Fact]
    public void AnOutcomeThatHasNoWordsIsADefect() =>
        Assert.Contains("99", Assert.Throws<InvariantBrokenException>(() => Words((AdmissionOutcome)99)).Message, StringComparison.Ordinal);

    private static string Words(AdmissionOutcome outcome) => Control.Admission.Words(
        new AdmissionResult(outcome, CircuitA: 3, MonotonicTime.Zero), Sites.OneRack().Circuits[0], noon);
}
