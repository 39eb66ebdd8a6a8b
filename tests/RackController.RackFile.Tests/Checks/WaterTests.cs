namespace RackController.RackFile.Tests.Checks;

public sealed class WaterTests
{
    [Theory]
    [InlineData("standpipe: 40 mm", "standpipe: 85 mm", "the standpipe is 85 mm high and the tray's rim 85 mm", "at most 75 mm")]
    [InlineData("standpipe: 40 mm", "rim: 40 mm", "the standpipe is 44.5 mm high and the tray's rim 40 mm", "at most 30 mm")]
    [InlineData("standpipe: 40 mm", "standpipe: 80 mm", "warning: the standpipe (80 mm) ends less than 10 mm below the rim", "")]
    [InlineData("standpipe: 40 mm", "insert-trays: 9", "warning: 9 insert trays of 10 x 20 in do not fit", "")]
    public void ATrayKeepsItsWater(string old, string replacement, string what, string whatToDo) =>
        Expect.Among(RackFiles.SmallWith(old, replacement), what, whatToDo);

    [Theory]
    [InlineData("high-float: 65 mm", "high-float: 40 mm", "the high float switches at 40 mm, where every flood reaches it")]
    [InlineData("high-float: 65 mm", "high-float: 90 mm", "when water already runs over the rim")]
    [InlineData("high-float: 65 mm", "high-float: 50 mm", "warning: the high float switches less than 10 mm above the standpipe")]
    [InlineData("high-float: 65 mm", "full-float: 50 mm", "the full float switches at 50 mm, which the water does not reach")]
    [InlineData("low-float: 60 mm", "low-float: 20 mm", "the pump draws air below 30 mm")]
    [InlineData("low-float: 60 mm", "low-float: 380 mm", "so the pump never runs")]
    [InlineData("leak-rope: yes", "full-float: 420 mm", "the full float switches at 420 mm, above the brim (400 mm)")]
    public void AFloatStandsWhereItCanTellSomething(string old, string replacement, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(old, replacement), expected);

    /// <summary>Two trays of 1.12 m x 0.64 m hold 0.7168 m2 x (44.5 - 0.3 x 40) mm = 23.3 L and 0.7168 x (40 - 0.3 x 40) = 20.1 L
    /// (arithmetic); 30 mm of a tank of 0.4 m2 are 12 L, and 60 mm 24 L.</summary>
    [Theory]
    [InlineData("normal-volume: 50 L", "the trays hold 43 L at flood depth, which leaves 7 L of 50 L",
        "below 12 L: fill to at least 67 L")]
    [InlineData("normal-volume: 60 L", "warning: the trays hold 43 L at flood depth, which leaves 17 L",
        "stops the pump below 24 L")]
    public void AReservoirHoldsWhatTheTraysTakeAndWhatThePumpNeeds(string volume, string what, string why) =>
        Expect.Complaint(RackFiles.SmallWith("normal-volume: 140 L", volume), what, why);

    [Theory]
    [InlineData("normal-volume: 140 L", "normal-volume: 200 L", "more than the reservoir holds")]
    [InlineData("normal-volume: 140 L", "pump-intake: 500 mm", "a pump intake above the brim")]
    [InlineData("depth: 400 mm", "depth: 40 mm", "a reservoir less than 50 mm deep")]
    public void AReservoirIsPossible(string old, string replacement, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(old, replacement), expected);

    [Theory]
    [InlineData("head: 2.5 m", "head: 0.4 m", "the pump lifts 0.5 m at most, and no water reaches tier 2")]
    [InlineData("head: 2.5 m", "head: 0 m", "a rated point without flow or without head")]
    [InlineData("rated: { flow: 30 L/min, head: 2.5 m }", "inrush: 6", "a pump that does not say what it can lift")]
    [InlineData("rated: { flow: 30 L/min, head: 2.5 m }",
        "curve: [{ flow: 0 L/min, head: 3 m }, { flow: 20 L/min, head: 3 m }, { flow: 40 L/min, head: 1 m }]",
        "points that no falling curve passes through")]
    public void APumpReachesTheTop(string old, string replacement, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(old, replacement), expected);

    [Fact]
    public void TiersStandOneAboveTheOther() =>
        Expect.Complaint(
            RackFiles.SmallWith("      - light: { power: 80 W, ppfd: 180 umol/m2/s }\n        valve: { power: 6 W }\n        tray",
                "      - height: 400 mm\n        tray"),
            "tier 2 is at 400 mm and not above the tier below it");
}
