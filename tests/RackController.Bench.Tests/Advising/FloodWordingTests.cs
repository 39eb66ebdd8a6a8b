using RackController.Bench.Tests.Support;
using RackController.Plant;

namespace RackController.Bench.Tests.Advising;

public sealed class FloodWordingTests
{
    private static readonly Lazy<FloodAdvice> Starved = new(() =>
    {
        var site = SurveyedRacks.Site(5, "{ flow: 16.5 L/min, head: 1.8 m }", "branch: { minor-loss: 14 }");
        return FloodAdvice.Of(site, site.Racks[0]);
    });

    [Fact]
    public void TheTableHasTheTopTierFirstAndEveryNumberItsUnit()
    {
        var rows = FloodWording.Rows(Starved.Value.Survey).ToList();

        Assert.Equal(["tier 5", "0.0 to 0.0 L/min", "never", "0 mm", "-"], rows[0]);
        Assert.Equal("tier 1", rows[4][0]);
        Assert.EndsWith(" min", rows[4][2], StringComparison.Ordinal);
        Assert.All(rows, row => Assert.Equal(FloodWording.Columns.Length, row.Length));
    }

    [Fact]
    public void EveryProblemIsASentenceWithItsNumbers()
    {
        var tier = Starved.Value.Survey.Tiers[3];
        var sentences = FloodProblemWords.Of(Starved.Value.Survey).ToList();

        Assert.Equal("the pump cannot feed tier 5: no water gets there", sentences[0]);
        Assert.Equal(
            $"tier 4 gets {tier.FlowAtLowestLpm:0.0} L/min once the reservoir is down to 60 mm, and its weep takes 2.3 L/min when it "
            + "is full",
            sentences[1]);
        Assert.Equal(
            $"tiers 3, 4 are full only after {tier.Filled!.Value.TotalMinutes:0.0} min, and the fill ends after 5 min", sentences[2]);
    }

    [Fact]
    public void AWayNamesItsChangesAndWhatTheyComeTo()
    {
        var lines = FloodWording.Wrong(Starved.Value).ToList();
        var way = lines.FindIndex(line => line.Text == "To put it right:");

        Assert.NotEmpty(lines[way].Items);
        Assert.Matches(
            @"^Simulated so, tiers get [\d.]+ to [\d.]+ L/min, are full after [\d.]+ to [\d.]+ min, stand at .* mm and are empty "
            + @"after .* min\.$",
            lines[way + 1].Text);
    }

    [Fact]
    public void OfARackThatDoesWhatItShouldNothingIsSaidToBeWrong()
    {
        var site = SurveyedRacks.Site(2, "{ flow: 20 L/min, head: 3 m }");
        Assert.Empty(FloodWording.Wrong(FloodAdvice.Of(site, site.Racks[0])));
    }

    [Fact]
    public void AWaterLevelThatReachesTheFloatSaysWhereAndHowMuch()
    {
        var site = SurveyedRacks.Site(1, "{ flow: 40 L/min, head: 3 m }", "branch: { minor-loss: 5, bore: 16 mm }", volumeL: 200);
        var survey = FloodSurvey.Of(site, site.Racks[0]);
        var tier = survey.Tiers[0];

        Assert.Equal(
            $"tier 1 gets {tier.FlowLpm:0.0} L/min, and weep and standpipe carry {tier.CarriedLpm:0.0} L/min away: "
            + $"the water rises to {tier.SettledMm:0} mm, over its rim (85 mm) onto the floor",
            FloodProblemWords.Of(survey).First());
    }
}
