namespace RackController.RackFile.Tests.Checks;

public sealed class ScheduleTests
{
    private const string Floods = "at: [07:00, 13:00, 19:00]";

    [Theory]
    [InlineData("at: [07:00, 07:25]", "the flood at 07:00 cannot end before the next begins 25 min later")]
    [InlineData("at: [00:10, 12:00, 23:55]", "the flood at 23:55 cannot end before the next begins 15 min later")]
    [InlineData("every: 29 min\n        from: 07:00\n        for: 2 h",
        "the flood at 07:00 cannot end before the next begins 29 min later")]
    [InlineData("every: 35 min\n        from: 22:00\n        for: 24 h", "cannot end before the next begins")]
    [InlineData("over-photoperiod: 40", "cannot end before the next begins 24 min later")]
    public void AFloodEndsBeforeTheNextBegins(string times, string expected) =>
        Expect.Among(RackFiles.SmallWith(Floods, times), expected);

    [Fact]
    public void AFloodThatCannotEndNamesEveryPartOfItsTime() => Expect.Complaint(
        RackFiles.SmallWith(Floods, "at: [07:00, 07:29]"),
        "it takes up to 10 min of fill and soak, then 20 min to drain and 15 min for the pump to rest",
        "leave at least 30 min from flood to flood");

    [Fact]
    public void AFloodMayEndJustAsTheNextBegins() => Expect.Complaints(RackFiles.SmallWith(Floods, "at: [07:00, 07:30]"));

    [Theory]
    [InlineData("fill: 5 min", "fill: 10 min", "fill and soak take up to 15 min, and the pump is stopped after 15 min")]
    [InlineData("fill: 5 min", "fill: { until-full-within: 10 min }", "and the pump is stopped after 15 min")]
    public void AFloodIsOverBeforeThePumpIsStopped(string old, string replacement, string expected) =>
        Expect.Among(RackFiles.SmallWith(old, replacement), expected);

    [Fact]
    public void ADayOfFloodsFitsThePumpsBudget() => Expect.Complaint(
        RackFiles.SmallWith("tiers:\n", "limits: { pump-daily-budget: 20 min }\n    tiers:\n"),
        "3 floods run the pump up to 30 min a day, and its budget is 20 min", "raise `pump-daily-budget`");

    /// <summary>A tray of 0.7168 m2 falls from 44.5 to 3 mm through 9.5 mm, Cd 0.62, in 829 s with three tenths of it taken up to
    /// 40 mm (closed form t = 2 A (sqrt h1 - sqrt h2) / (Cd a sqrt(2 g))), so 13 min are too short.</summary>
    [Theory]
    [InlineData("drain: 13 min", "warning: a tray takes about 14 min to empty through its weep, and `drain` is 13 min")]
    [InlineData("drain: 14 min", null)]
    public void ATrayEmptiesWhileItDrains(string drain, string? expected) =>
        Expect.Complaints(
            RackFiles.SmallWith("drain: 20 min", drain),
            expected is null ? [] : [$"rack.yaml:32:9: {expected}: lengthen `drain`, or drill the weep wider"]);

    [Fact]
    public void ATrayWithoutAWeepNeedsAWayBack()
    {
        Expect.Complaint(RackFiles.SmallWith("standpipe: 40 mm", "weep: 0 mm"), "a tray without a weep, and a check valve");
        Expect.Complaints(
            RackFiles.SmallWith("standpipe: 40 mm", "weep: 0 mm")
                .Replace("    tiers:\n", "    supply: { check-valve: no }\n    tiers:\n", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("{ until-full-within: 8 min }", "a fill until full, and no tray has a full float or a level")]
    [InlineData("{ for: 5 min, until-full-within: 8 min }", "not one way to end a fill")]
    public void AFillHasAnEnd(string fill, string expected) =>
        Expect.Complaint(RackFiles.SmallWith("fill: 5 min", $"fill: {fill}"), expected);

    [Fact]
    public void ADepthThatTheWaterDoesNotReachIsNoEndOfAFill() => Expect.Complaint(
        RackFiles.SmallWith("fill: 5 min", "fill: { until-full-within: 8 min, full-depth: 42 mm }")
            .Replace("high-float: 65 mm", "high-float: 65 mm, tray-level: yes", StringComparison.Ordinal),
        "a full depth of 42 mm, which the water does not reach", "the lowest standpipe (40 mm)");

    [Theory]
    [InlineData("", "floods need exactly one of `at`, `every` and `over-photoperiod`")]
    [InlineData("at: [07:00]\n        over-photoperiod: 2", "floods need exactly one of")]
    [InlineData("every: 4 h", "`every`, `from` and `for` belong together")]
    [InlineData("at: [07:00, 13:00, 07:00]", "`07:00` stands twice")]
    public void FloodTimesAreGivenInOneWay(string times, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(Floods, times), expected);

    [Theory]
    [InlineData("lights: { on: 06:00, for: 25 h }", "`for` is `25 h`, outside 0 min to 24 h: a day has 24 h")]
    [InlineData("lights: { on: 06:00, for: 16 h, tiers: [{ tier: 5, on: 07:00, for: 8 h }] }",
        "a light on tier 5, which is not there: the rack has tiers 1 to 2")]
    [InlineData("lights: { on: 06:00, for: 16 h, tiers: [{ tier: 2, on: 07:00, for: 8 h }, { tier: 2, on: 08:00, for: 8 h }] }",
        "tier 2 stands here twice")]
    public void LightsAreWhereTheScheduleLooksForThem(string lights, string expected) =>
        Expect.Complaint(RackFiles.SmallWith("lights: { on: 06:00, for: 16 h }", lights), expected);

    [Fact]
    public void AnEntryForATierWithoutALightIsRefused() => Expect.Complaint(
        RackFiles.SmallWith("lights: { on: 06:00, for: 16 h }",
        "lights: { on: 06:00, for: 16 h, tiers: [{ tier: 2, on: 07:00, for: 8 h }] }")
            .Replace("      - light: { power: 80 W, ppfd: 180 umol/m2/s }\n        valve: { power: 6 W }\n        tray",
                "      - valve: { power: 6 W }\n        tray", StringComparison.Ordinal),
        "tier 2 has no light to switch");

    [Fact]
    public void ALightThatIsNeverLitIsAWarning() => Expect.Complaint(
        RackFiles.SmallWith("      lights: { on: 06:00, for: 16 h }\n", ""),
        "warning: tier 1 has a light and the schedule has no `lights`");

    [Fact]
    public void ATierOutOfUseWithoutAValveIsFloodedAllTheSame() => Expect.Complaint(
        RackFiles.SmallWith("valve: { power: 6 W }\n        tray", "in-use: no\n        tray"),
        "warning: tier 2 is out of use and has no valve");
}
