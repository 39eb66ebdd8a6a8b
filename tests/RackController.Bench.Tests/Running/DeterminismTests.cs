using RackController.Bench.Tests.Support;
using RackController.Testing;

namespace RackController.Bench.Tests.Running;

public sealed class DeterminismTests
{
    [Theory]
    [InlineData("breaker-trip-at-noon.yaml")]
    [InlineData("boot-without-clock.yaml")]
    public void TheSameScenarioGivesTheSameLogByteForByte(string name)
    {
        var scenario = Shipped(name);
        Assert.Equal(LogText.Of(ScenarioRun.Run(scenario)), LogText.Of(ScenarioRun.Run(scenario)));
    }

    [Fact]
    public void LeapingOverQuietTimesChangesNoVerdictAndNoEvent()
    {
        var scenario = Scenes.Read(
            "start: 2026-03-02 06:50\nlength: 45 min\nevents:\n  - at: 12 min\n    fault: breaker-trip\n"
            + "    circuit: cellar sockets\n    for: 1 min\n  - at: 30 min\n    ask: flood-now\n    rack: north\n"
            + "expect:\n  - that: the floor stays dry\n    never: { rack: north, spilled: above 0 L }\n").Scenario!;
        var leapt = ScenarioRun.Run(scenario);
        var scanned = ScenarioRun.Run(scenario, everyScan: true);

        Assert.True(leapt.Scans * 10 < scanned.Scans, "a run that leaps makes far fewer scans");
        Assert.Equal(LogText.Of(scanned), LogText.Of(leapt));
        Assert.Equal(scanned.Verdicts.Select(verdict => verdict.IsMet), leapt.Verdicts.Select(verdict => verdict.IsMet));
    }

    private static Scenario Shipped(string name) =>
        ScenarioReader.Read(ShippedFiles.PathTo($"config/scenarios/{name}")).Scenario!;
}
