using System.CommandLine;
using System.Diagnostics;
using RackController.Bench;

namespace RackController.Verbs;

/// <summary><c>bench FILE</c>: runs a scenario in virtual time and says whether it held.</summary>
internal static class BenchVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = new Argument<FileInfo>("file") { Description = "A scenario." };
        var verb = new Command("bench", "Run a scenario in virtual time and say whether it held.") { file };
        verb.SetAction(parsed => Run(parsed.GetRequiredValue(file), parsed.InvocationConfiguration.Output));
        return verb;
    }

    private static int Run(FileInfo file, TextWriter output)
    {
        var reading = ScenarioReader.Read(file.ToString());
        foreach (var c in reading.Complaints) output.WriteLine(c);
        if (reading.Scenario is null) return 1;
        var watch = Stopwatch.StartNew();
        var result = ScenarioRun.Run(reading.Scenario);
        output.WriteLine($"{watch.Elapsed} scans {result.Scans}");
        if (Environment.GetEnvironmentVariable("LOG") is not null) output.WriteLine(LogText.Of(result));
        foreach (var v in result.Verdicts) { output.WriteLine($"{v.IsMet} {v.Words} {v.Judged} {v.Failure?.Seen}"); foreach (var c in v.Failure?.Causes ?? []) output.WriteLine("   " + LogText.Line(reading.Scenario.Site, c)); }
        foreach (var h in result.Hazards) output.WriteLine(h);
        foreach (var f in result.Floods) { output.WriteLine($"{f.At} {f.PumpRan} " + string.Join(", ", f.Trays.Select(t => $"{t.PeakMm:0.0} {t.Filled?.TotalMinutes:0.0} {t.Drained?.TotalMinutes:0.0}"))); }
        foreach (var r in result.Racks) output.WriteLine(r.ToString() + string.Join(";", r.TierLights));
        foreach (var t in result.Trips.Concat(result.Alarms)) output.WriteLine(t);
        output.WriteLine(LogText.Fingerprint(result));
        return result.Passed ? 0 : 1;
    }
}
