using RackController.Bench.Tests.Support;

namespace RackController.Bench.Tests.Running;

public sealed class RoomScheduleTests
{
    private const string WarmRoom =
        "start: 2026-03-02 00:00\nlength: 2 d\nroom:\n  - { at: 04:00, air: 28 °C, humidity: 40 % }\n"
        + "  - { at: 16:00, air: 32 °C, humidity: 30 % }\n";

    [Fact]
    public void TheAirOfTheRackFollowsTheRoomThroughEveryDay() => Holds(
        "expect:\n  - that: it is warm from the first moment on\n    always: { tier: north/tier 1, air: above 26 °C }\n"
        + "  - that: it is warmest in the afternoon\n    always: { tier: north/tier 1, air: above 31 °C }\n"
        + "    from: 1 d 15 h\n    until: 1 d 17 h\n"
        + "  - that: the nights are cooler\n    always: { tier: north/tier 1, air: below 29 °C }\n"
        + "    from: 1 d 3 h\n    until: 1 d 4 h\n"
        + "  - that: dry air stays dry\n    always: { tier: north/tier 1, humidity: below 60 % }\n");

    [Fact]
    public void AnEventOfTheRoomTakesOverForGood() => Holds(
        "events:\n  - at: 20 h\n    name: somebody opens the door\n    room: 15 °C\n    humidity: 70 %\n"
        + "expect:\n  - that: it cools\n    always: { tier: north/tier 1, air: below 20 °C }\n    from: 1 d\n"
        + "  - that: it is damp\n    always: { tier: north/tier 1, humidity: above 50 % }\n    from: 1 d\n");

    [Fact]
    public void LeapingAndScanningThroughADayOfTheRoomComeToTheSame()
    {
        var scenario = Scenes.Read(
            "start: 2026-03-02 05:30\nlength: 90 min\nroom:\n  - { at: 05:40, air: 24 °C, humidity: 45 % }\n"
            + "  - { at: 06:20, air: 20 °C, humidity: 85 % }\n  - { at: 06:50, air: 23 °C, humidity: 40 % }\n"
            + "expect:\n  - that: the fan clears the damp\n    within: 20 min\n    of: { tier: north/tier 1, humidity: above 60 % }\n"
            + "    then: { load: north/exhaust fan, powered: yes }\n").Scenario!;
        var leapt = ScenarioRun.Run(scenario);
        Assert.True(leapt.Passed);
        Assert.Equal(LogText.Of(ScenarioRun.Run(scenario, everyScan: true)), LogText.Of(leapt));
    }

    private static void Holds(string rest)
    {
        var result = Scenes.Run(WarmRoom + rest);
        Assert.Empty(result.Verdicts.Where(verdict => !verdict.IsMet)
            .Select(verdict => $"{verdict.Expectation.Name}: {verdict.Failure!.Seen}"));
    }
}
