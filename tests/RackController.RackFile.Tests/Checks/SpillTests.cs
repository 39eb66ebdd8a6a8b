using NodaTime;
using RackController.Model;

namespace RackController.RackFile.Tests.Checks;

public sealed class SpillTests
{
    private const string Tray = "    drip-tray: { capacity: 60 L, depth: 100 mm }\n";
    private const string Wired = "    wired: { float-cutout: 25 mm }\n";

    [Fact]
    public void ADripTrayAndAFloatInThePumpsWireAreRead()
    {
        var rack = Expect.Site(RackFiles.Small).Racks[0];
        Assert.Equal(new DripTray(60, 100), rack.DripTray);
        Assert.Equal(new FloatCutout(null, 25), rack.FloatCutout);

        var above = Expect.Site(RackFiles.SmallWith("25 mm", "{ tier: 2, height: 60 mm }")).Racks[0];
        Assert.Equal(new FloatCutout(2, 60), above.FloatCutout);
    }

    [Fact]
    public void ATimeRelayInThePumpsWireIsRead() => Assert.Equal(
        new TimeCutout(Duration.FromMinutes(20)),
        Expect.Site(RackFiles.SmallWith("float-cutout: 25 mm", "float-cutout: 25 mm, time-cutout: 20 min")).Racks[0].TimeCutout);

    [Theory]
    [InlineData("16 min", "opens the pump's wire after 16 min, and the controller lets the pump run 15 min")]
    [InlineData("31 min", "warning: a pump whose relay has welded may run 31 min before the time cutout opens its wire")]
    [InlineData("30 s", "outside 1 min to 4 h")]
    public void ATimeRelayOpensAfterTheControllerWouldHaveAndNotLongAfter(string time, string expected) =>
        Expect.Among(RackFiles.SmallWith("float-cutout: 25 mm", $"float-cutout: 25 mm, time-cutout: {time}"), expected);

    [Fact]
    public void ADripTrayIsEightyMillimetresDeepUnlessItSaysOtherwise() => Assert.Equal(
        new DripTray(60, 80), Expect.Site(RackFiles.SmallWith("{ capacity: 60 L, depth: 100 mm }", "60 L")).Racks[0].DripTray);

    [Fact]
    public void ARackWithNothingWiredIsWarnedOf() => Expect.Complaint(
        RackFiles.SmallWith(Wired, ""), "warning: nothing wired stops the pump when its relay welds or the controller fails",
        "wired: { float-cutout: 15 mm }");

    [Theory]
    [InlineData("float-cutout: 25 mm", "float-cutout: 100 mm", "the float cutout switches at 100 mm, when water already runs over")]
    [InlineData("leak-rope: yes", "drip-tray-float: 120 mm", "the drip tray float switches at 120 mm, when water already runs over")]
    [InlineData("25 mm", "{ tier: 3, height: 60 mm }", "a float cutout at tier 3, which is not there")]
    [InlineData("25 mm", "{ tier: 1, height: 44 mm }", "above the standpipe (44.5 mm), which every flood reaches")]
    [InlineData("25 mm", "{ tier: 1, height: 85 mm }", "below the rim (85 mm)")]
    [InlineData("25 mm", "{ tier: 1, height: 50 mm }", "warning: the float cutout switches at 50 mm, less than 10 mm above")]
    public void AFloatHangsWhereItCanAct(string old, string replacement, string expected) =>
        Expect.Among(RackFiles.SmallWith(old, replacement), expected);

    [Fact]
    public void AFloatInADripTrayNeedsADripTray() => Expect.Complaint(
        RackFiles.SmallWith(Tray, ""), "the float cutout has no drip tray to hang in", "write `drip-tray: 40 L`");

    /// <summary>The larger tray holds 0.7168 m2 x (54.5 - 0.3 x 40) mm = 30.5 L when water stands 10 mm above its standpipe; 26.6 mm of
    /// bore over 1050 mm and 450 mm of riser hold 0.83 L; a pump of at most 60 L/min gives 3 L in 3 s; a quarter of 40 L lies below
    /// the float (arithmetic).</summary>
    [Fact]
    public void ADripTrayHoldsATrayThePipesAndWhatComesBeforeThePumpStands() => Expect.Complaint(
        RackFiles.SmallWith("capacity: 60 L", "capacity: 40 L"), "the drip tray holds 40 L and may have to hold 44 L",
        "30 L of a tray, 1 L of the pipes, 3 L that the pump gives until it stands still, 10 L before the float lifts",
        "use a larger drip tray, or place its float lower");
}
