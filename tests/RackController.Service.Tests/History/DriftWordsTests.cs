using NodaTime;
using RackController.Model;

namespace RackController.Service.Tests;

public sealed class DriftWordsTests
{
    [Theory]
    [InlineData(DriftOf.TierFill, 4, 100, 130, "Tier 4 fills 30 % slower", "(100 s then, 130 s now): check its screen")]
    [InlineData(DriftOf.TierDrain, 1, 100, 60, "Tier 1 drains 40 % faster", "(100 s then, 60 s now): see whether it")]
    [InlineData(DriftOf.Volume, null, 90, 45, "A flood takes 50 % less water", "(90 L then, 45 L now): check the pump")]
    [InlineData(DriftOf.Fill, null, 200, 300, "A flood takes 50 % longer to fill", "(200 s then, 300 s now): check the")]
    public void ADriftIsASentenceThatSaysWhereToLook(DriftOf of, int? tier, double before, double lately, string change, string since) =>
        Assert.StartsWith(
            $"{change} than in the 30 days before {since}", DriftWords.Of(new FloodDrift(of, tier, before, lately), ShownUnits.Metric),
            StringComparison.Ordinal);

    [Fact]
    public void ADriftFromTheFitSaysWhenThatWas() => Assert.StartsWith(
        "Tier 2 drains 50 % slower than it was fitted to on 2026-11-30 (100 s then, 150 s now): look for roots",
        DriftWords.Of(new FloodDrift(DriftOf.TierDrain, 2, 100, 150) { FittedOn = new LocalDate(2026, 11, 30) }, ShownUnits.Metric),
        StringComparison.Ordinal);
}
