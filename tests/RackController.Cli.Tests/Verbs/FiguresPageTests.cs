using NodaTime;
using RackController.Bench;
using RackController.Cli.Tests.Support;
using RackController.Verbs;

namespace RackController.Cli.Tests.Verbs;

public class FiguresPageTests
{
    [Fact]
    public void ThePageReadsAsApproved()
    {
        using var output = new StringWriter();
        FiguresPage.Print(
            new Figures
            {
                Day = Run(days: 1, seconds: 0.01),
                Year = Run(days: 365, seconds: 1.5),
                Decade = Run(days: 3650, seconds: 15),
                SixtyFourDay = Run(days: 1, seconds: 0.5),
                Memory = [new MemoryUse(20_000_000, 90_000_000), new MemoryUse(21_000_000, 91_000_000)],
                Scan = new ScanCost(100, 300, 0),
                SixtyFourScan = new ScanCost(5_000, 20_000, 0),
                Step = new StepCost(1_234, 0),
                Accuracies = [new Accuracy(0.01, false, 60, TimeSpan.FromMilliseconds(0.1), 0.05), new Accuracy(0.001, true, 100,
                    TimeSpan.FromMilliseconds(0.2), 0.01)],
            },
            Screen.Over(output));
        Approved.Matches("bench-measure", output.ToString());
    }

    [Theory]
    [InlineData("bench")]
    [InlineData("bench", "some.yaml", "--measure")]
    public void ItIsEitherAScenarioOrMeasuring(params string[] args)
    {
        var answer = Prompt.Run(args);
        Assert.Equal(2, answer.ExitCode);
        Assert.StartsWith("name a scenario, such as config/scenarios/first-week.yaml, or write --measure", answer.Error);
    }

    private static TimedRun Run(int days, double seconds) =>
        new(Duration.FromDays(days), TimeSpan.FromSeconds(seconds), 700 * days, 1_000 * days, 8 * days);
}
