using System.Globalization;
using RackController.Bench;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>The page that <c>bench --measure</c> prints: speed, memory and accuracy, side by side.</summary>
internal static class FiguresPage
{
    private const double BytesToAMb = 1e6;

    /// <summary>Measures and prints.</summary>
    /// <param name="output">Where to print.</param>
    public static int MeasureAndPrint(TextWriter output)
    {
        var console = Screen.Over(output);
        Figures? figures = null;
        if (Screen.IsTerminal(output))
        {
            console.Status().Start("measuring", status => figures = Figures.Measure(what => status.Status($"measuring {what}")));
        }

        Print(figures ?? Figures.Measure(_ => { }), console);
        return ExitCode.AsExpected;
    }

    internal static void Print(Figures figures, IAnsiConsole console)
    {
        console.WriteLine("Five tiers with every kind of load and sensor, eight floods a day, interlocks, hazard watches and");
        console.WriteLine("recorders on, the solution changed every week. Ratios travel, figures do not.");
        console.WriteLine();
        var table = new Table().Border(TableBorder.Simple).AddColumns("what", "on one core", "real time", "scans", "plant steps", "floods");
        AddRun(table, "a day", figures.Day);
        AddRun(table, "a year", figures.Year);
        AddRun(table, "ten years", figures.Decade);
        AddRun(table, "a day of 64 racks", figures.SixtyFourDay);
        console.Write(table);
        Lines(figures, console);
        Accuracy(figures, console);
    }

    private static void AddRun(Table table, string what, TimedRun run) => table.AddRow(
        what, $"{run.Took.TotalSeconds:0.000} s", $"{run.Ratio / 1e6:0.00} million times", Count(run.Scans), Count(run.PlantSteps),
        Count(run.Floods));

    private static void Lines(Figures figures, IAnsiConsole console)
    {
        var ratio = figures.SixtyFourDay.Took / figures.Day.Took;
        var (first, last) = (figures.Memory[0], figures.Memory[^1]);
        console.WriteLine($"  64 racks on 16 circuits take {ratio:0} times as long as one");
        console.WriteLine($"  one scan of one rack: {Scan(figures.Scan, 1, "ns")}");
        console.WriteLine($"  one scan of 64 racks: {Scan(figures.SixtyFourScan, 1e3, "us")}");
        console.WriteLine($"  one plant step through floods: {figures.Step.StepNs / 1e3:0.00} us, {figures.Step.Bytes:0} bytes allocated");
        console.WriteLine($"  memory after one year and after ten: heap {Mb(first.HeapBytes)} and {Mb(last.HeapBytes)}, "
            + $"working set {Mb(first.WorkingSetBytes)} and {Mb(last.WorkingSetBytes)}");
        console.WriteLine();
    }

    private static void Accuracy(Figures figures, IAnsiConsole console)
    {
        console.WriteLine("One flood and its draining, held second by second against a solution to 0.0000001 mm:");
        var table = new Table().Border(TableBorder.Simple)
            .AddColumns("tolerance of a step", "steps", "took", "greatest error of any level");
        foreach (var accuracy in figures.Accuracies)
        {
            table.AddRow(
                $"{Mm(accuracy.ToleranceMm)}{(accuracy.IsDefault ? ", the default" : "")}", Count(accuracy.Steps),
                $"{accuracy.Took.TotalMilliseconds:0.000} ms", Mm(accuracy.WorstMm));
        }

        console.Write(table);
    }

    private static string Scan(ScanCost cost, double unitNs, string unit) =>
        $"{cost.AtRestNs / unitNs:0.0} {unit} at rest, {cost.MovingNs / unitNs:0.0} {unit} while every value moves, "
        + $"{cost.Bytes:0} bytes allocated";

    private static string Count(long count) => count.ToString("#,0", CultureInfo.InvariantCulture);

    private static string Mb(long bytes) => $"{bytes / BytesToAMb:0} MB";

    private static string Mm(double mm) => mm.ToString("0.#######", CultureInfo.InvariantCulture) + " mm";
}
