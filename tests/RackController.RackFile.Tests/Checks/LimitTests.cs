namespace RackController.RackFile.Tests.Checks;

public sealed class LimitTests
{
    [Theory]
    [InlineData("pump-maximum-run: 5 s", "`pump-maximum-run` is `5 s`, outside 10 s to 60 min: ")]
    [InlineData("pump-maximum-run: 61 min", "outside 10 s to 60 min: ")]
    [InlineData("pump-rest: 25 h", "outside 10 s to 24 h: without a rest the trays cannot drain")]
    [InlineData("samples-to-trip: 6", "`samples-to-trip` is `6`, out of range: write a count, a whole number from 1 to 5")]
    [InlineData("air-hot: 50 °C", "`air-hot` is `50 °C`, outside 20 °C to 45 °C")]
    [InlineData("air-hot-return: 20 K", "outside 0.5 K to 10 K")]
    [InlineData("water-cold: 20 °C, water-warm: 18 °C", "water cannot be too cold and too warm at once")]
    [InlineData("service-hold-maximum: 2 min", "a service hold would warn before it begins")]
    [InlineData("pump-daily-budget: 40 min, pump-maximum-run: 45 min", "less than a single run of the pump (45 min)")]
    [InlineData("float-test-interval: 12 h", "`float-test-interval` is `12 h`, outside 1 d to 400 d: a test every day")]
    [InlineData("relay-test-interval: 401 d", "outside 1 d to 400 d")]
    [InlineData("first-test-within: 91 d", "outside 1 d to 90 d: nobody tests a rack before it stands")]
    [InlineData("test-step-within: 9 s", "outside 10 s to 10 min")]
    [InlineData("floats-contradict-after: 11 min", "outside 1 s to 10 min: waves settle within seconds")]
    [InlineData("still-floods-to-tell: 21", "a whole number from 1 to 20")]
    [InlineData("still-floods-to-forbid: 101", "a whole number from 1 to 100")]
    public void ALimitOutsideItsBoundsIsRefusedWithTheReason(string limit, string expected) =>
        Expect.Complaint(RackFiles.SmallWith("tiers:\n", $"limits: {{ {limit} }}\n    tiers:\n"), expected);

    [Theory]
    [InlineData("period: 10 ms", "`period` is `10 ms`, outside 20 ms to 1 s")]
    [InlineData("late-after: 200 ms", "`late-after` is `200 ms`, outside 300 ms to 10 s")]
    [InlineData("period: 500 ms", "less than three scan periods")]
    public void AScanIsOftenEnough(string scan, string expected) =>
        Expect.Complaint(RackFiles.SmallWith("io: simulated", $"scan: {{ {scan} }}"), expected);

    [Theory]
    [InlineData("period: 1 s, late-after: 3 s", "samples-to-trip: 2")]
    [InlineData("period: 250 ms", "samples-to-trip: 5")]
    public void AFloatTripsWithinASecond(string scan, string limit) => Expect.Complaint(
        RackFiles.SmallWith("io: simulated", $"scan: {{ {scan} }}\nio: simulated")
            .Replace("tiers:\n", $"limits: {{ {limit} }}\n    tiers:\n", StringComparison.Ordinal),
        "a float would not cut the pump within a second");

    [Fact]
    public void APumpThatNothingKeepsFromRunningDryIsAWarning() => Expect.Complaint(
        RackFiles.SmallWith("      low-float: 60 mm\n", ""), "warning: nothing keeps the pump from running dry",
        "would stop it within a second");

    [Fact]
    public void WaterOnTheFloorThatNobodyNoticesIsAWarning() => Expect.Complaint(
        RackFiles.SmallWith("      leak-rope: yes\n", "")
        .Replace("        sensors: { high-float: 65 mm }\n", "", StringComparison.Ordinal),
        "warning: nothing notices water on the way to the floor");

    [Theory]
    [InlineData("{ on-above: 65 %, off-below: 60 %}", "fan runs by a reading that no sensor of this rack gives")]
    [InlineData("{ on-above: 26 °C, off-below: 60 % }", "not below `on-above`")]
    [InlineData("{ on-above: 26 °C, off-below: 27 °C }", "not below `on-above`")]
    [InlineData("{ on: 10 min }", "not one whole way to run")]
    [InlineData("sometimes", "`always` is `sometimes`")]
    public void AFanRunsInOneWay(string run, string expected) =>
        Expect.Complaint(RackFiles.SmallWith("- power: 12 W", $"- power: 12 W\n        run: {run}"), expected);
}
