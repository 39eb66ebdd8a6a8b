using RackController.Bench.Tests.Support;
using RackController.Plant;

namespace RackController.Bench.Tests.Advising;

public sealed class PumpWordingTests
{
    // Bernoulli: what the pump adds is lifted or lost. That the flows themselves are right is held elsewhere, to the EPANET engine.
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void LiftAndLossesAddUpToTheHeadOfThePumpsCurve(int tiers)
    {
        var duty = Survey(tiers, $"{{ flow: {10 * tiers} L/min, head: 3 m }}", "").Duty;

        Assert.Equal(duty.HeadM, duty.LiftM + duty.RiserLossM + duty.BranchLossM, 1e-9);

        // One rated point: 4/3 of its head at no flow, nothing at twice its flow, a parabola between.
        Assert.Equal(4 * (1 - Math.Pow(duty.FlowLpm / (20 * tiers), 2)), duty.HeadM, 1e-6);
        Assert.Equal(tiers, duty.TopTier);
    }

    [Fact]
    public void APumpThatFitsIsSaidToLiftToFillInTimeAndToLeaveRoomForTheDrains()
    {
        var lines = Lines(4, "{ flow: 40 L/min, head: 3 m }");

        Assert.Matches(@"^lifts: \d\.\d\d m at \d\d\.\d L/min: \d\.\d\d m up to tier 4, .* the pump shuts off at 4\.00 m$", lines[0]);
        Assert.Matches(
            @"^fills: tier 4, the last, gets \d+\.\d L/min and is full after \d\.\d min of the \d+ min that the pump runs$", lines[1]);
        Assert.Matches(@"^drains: tier 1 comes closest to its high float: it stands at \d+ mm, \d+ mm below it; ", lines[2]);
    }

    // The rack as in the reference case whose wide branches starve the top: lower, the branches take what there is.
    [Fact]
    public void APumpTooWeakForTheTopSaysByHowMuch()
    {
        var lines = Lines(5, "{ flow: 16.5 L/min, head: 1.5 m }", "branch: { minor-loss: 14 }");

        Assert.Contains("what is left does not reach tier 5, ", lines[0], StringComparison.Ordinal);
        Assert.Contains("it never is", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void APumpTooStrongForTheDrainsSaysHowFarTheWaterStandsAboveTheMark()
    {
        var lines = Lines(1, "{ flow: 90 L/min, head: 8 m }", "branch: { minor-loss: 5, bore: 40 mm }");

        Assert.Matches(@"^drains: tier 1 comes closest to its high float: it stands at \d+ mm, \d+ mm above it; ", lines[2]);
    }

    private static string[] Lines(int tiers, string pump, string more = "") => [.. PumpWording.Lines(Survey(tiers, pump, more))];

    private static FloodSurvey Survey(int tiers, string pump, string more)
    {
        var site = SurveyedRacks.Site(tiers, pump, more);
        return FloodSurvey.Of(site, site.Racks[0]);
    }
}
