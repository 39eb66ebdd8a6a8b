using RackController.Bench.Tests.Support;
using RackController.Plant;

namespace RackController.Bench.Tests.Scenarios;

public sealed class ScenarioReaderTests
{
    private const string Head = "start: 2026-03-02 06:30\nlength: 2 h\n";
    private const string Expect = "expect:\n  - that: it holds\n    never: { rack: north, spilled: above 1 L }\n";

    [Theory]
    [InlineData("", BreakerEdge.Fast)]
    [InlineData("breakers: fast\n", BreakerEdge.Fast)]
    [InlineData("breakers: slow\n", BreakerEdge.Slow)]
    public void AScenarioMayChooseHowEarlyItsBreakersOpen(string text, BreakerEdge edge) =>
        Assert.Equal(edge, Scenes.Read(Head + text + Expect).Scenario!.Found.Breakers);

    [Theory]
    [InlineData("fault: earth-leakage\n    load: north/aerator\n    size: 40 mA\n", 40)]
    [InlineData("fault: earth-leakage\n    load: north/aerator\n    size: 0.04 A\n", 40)]
    [InlineData("fault: brown-out\n    circuit: cellar sockets\n    size: 0.8\n", 0.8)]
    public void AFaultHasTheSizeThatIsWritten(string text, double size)
    {
        var scenario = Scenes.Read($"{Head}events:\n  - at: 1 h\n    {text}{Expect}").Scenario!;
        Assert.Equal(size, Assert.IsType<RackFails>(Assert.Single(scenario.Events)).Fault.Size, 1e-9);
    }
}
