using RackController.Testing;

namespace RackController.Cli.Tests.Verbs;

public sealed class PlanVerbTests
{
    private const string Head = """
        racks: demo-four-tier.yaml
        work-days: [mon, tue, wed, thu, fri, sat]
        blackout: { trays: 8 }
        from: 2026-03-02
        until: 2026-03-29
        """;

    [Fact]
    public void OrdersThatAreMetEndWithZeroAndLeaveEveryFile()
    {
        var (exitCode, output, files) = Plan("dated: [{ customer: inn, crop: radish, weight: 500 g, on: 2026-03-14 }]");
        Assert.Equal(0, exitCode);
        Assert.Contains("the one delivery is met", output, StringComparison.Ordinal);
        Assert.Contains("No plan for these orders does with fewer", output, StringComparison.Ordinal);
        Assert.Contains("L of water from the tap and ", output, StringComparison.Ordinal);
        Assert.Contains(" A on cellar sockets, ", output, StringComparison.Ordinal);
        Assert.Equal(["forecast.csv", "labels.html", "plan.ics", "plan.json", "report.html"], files);
    }

    [Fact]
    public void AnOrderThatComesTooLateIsNamedWithItsReasonAndTheDayOnWhichItCanBeMet()
    {
        var (exitCode, output, _) = Plan("dated: [{ customer: inn, crop: radish, weight: 500 g, on: 2026-03-05 }]");
        Assert.Equal(1, exitCode);
        Assert.Contains("not met  500 g of radish for inn on Thu 5 Mar", output, StringComparison.Ordinal);
        Assert.Contains("because  it takes 5 days, and the plan begins on Mon 2 Mar", output, StringComparison.Ordinal);
        Assert.Contains("remedy   deliver it on Sat 7 Mar", output, StringComparison.Ordinal);
    }

    // The demo rack has four tiers of four trays: more than sixteen at a time do not fit.
    [Fact]
    public void AnOrderWithoutRoomIsNamedWithTheTierThatWouldHelp()
    {
        var (exitCode, output, _) = Plan(
            "dated:\n  - { customer: inn, crop: radish, trays: 14, on: 2026-03-14 }\n"
            + "  - { customer: fair, crop: radish, trays: 4, on: 2026-03-14 }",
                Head.Replace("trays: 8", "trays: 40", StringComparison.Ordinal));
        Assert.Equal(1, exitCode);
        Assert.Contains("not met  4 trays of radish for fair on Sat 14 Mar", output, StringComparison.Ordinal);
        Assert.Contains("because  every tier that suits it is full", output, StringComparison.Ordinal);
        Assert.Contains("remedy   1 more tier like north/tier 4 from", output, StringComparison.Ordinal);
    }

    [Fact]
    public void APlanInWhichNothingIsDueSaysSoAndIsNoSuccess()
    {
        var (exitCode, output, _) = Plan("standing: [{ customer: inn, crop: radish, weight: 500 g, on: [tue], from: 2026-04-30 }]");
        Assert.Equal(1, exitCode);
        Assert.Contains("nothing is due within the plan", output, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileThatIsNotThereCannotBeTried()
    {
        var error = new StringWriter();
        Assert.Equal(3, CommandLine.Run(["plan", "nowhere/orders.yaml"], new StringWriter(), error));
        Assert.StartsWith("nowhere/orders.yaml:1:1: there is no such file", error.ToString(), StringComparison.Ordinal);
    }

    private static (int ExitCode, string Output, IEnumerable<string> Files) Plan(string orders, string head = Head)
    {
        var folder = Directory.CreateTempSubdirectory("rackcontroller-plan-");
        try
        {
            foreach (var shipped in (string[])["crops.yaml", "demo-four-tier.yaml"])
            {
                File.Copy(ShippedFiles.PathTo($"config/{shipped}"), Path.Combine(folder.FullName, shipped));
            }

            var file = Path.Combine(folder.FullName, "orders.yaml");
            File.WriteAllText(file, $"{head}\n{orders}\n");
            var made = Path.Combine(folder.FullName, "made");
            var output = new StringWriter();
            var exitCode = CommandLine.Run(["plan", file, "--work", "5", "--out", made], output, new StringWriter());
            return (exitCode, output.ToString(), [.. Directory.GetFiles(made).Select(one => Path.GetFileName(one)).Order()]);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
