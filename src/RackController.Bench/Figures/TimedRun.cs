using NodaTime;

namespace RackController.Bench;

/// <summary>What a run came to and how long it took, with every recorder and hazard watch looking on.</summary>
/// <param name="Length">How long the run was, as the rack counts it.</param>
/// <param name="Took">How long it kept processors busy, which on an idle machine is how long it took.</param>
/// <param name="Scans">Scans that the controller made.</param>
/// <param name="PlantSteps">Steps that the integration took.</param>
/// <param name="Floods">Floods that ran.</param>
public sealed record TimedRun(Duration Length, TimeSpan Took, long Scans, long PlantSteps, int Floods)
{
    /// <summary>How many times as fast as time passes.</summary>
    public double Ratio => Length.TotalSeconds / Took.TotalSeconds;

    /// <summary>The fastest of several runs: the one that others on the machine disturbed least.</summary>
    internal static TimedRun FastestOf(int rounds, Scenario scenario) =>
        Enumerable.Range(0, rounds).Select(_ => Of(scenario)).MinBy(run => run.Took)!;

    internal static TimedRun Of(Scenario scenario, Action<double>? progress = null)
    {
        GC.Collect();
        var before = Environment.CpuUsage.TotalTime;
        var result = ScenarioRun.Run(scenario, progress);
        var took = Environment.CpuUsage.TotalTime - before;
        return new TimedRun(scenario.Length, took, result.Scans, result.PlantSteps, result.FloodTotals.Sum(rack => rack.Count));
    }
}

/// <summary>Memory that is in use.</summary>
/// <param name="HeapBytes">What the program's objects take, after what nobody needs was collected.</param>
/// <param name="WorkingSetBytes">What the process takes of the machine.</param>
public sealed record MemoryUse(long HeapBytes, long WorkingSetBytes)
{
    internal static MemoryUse Now() => new(GC.GetTotalMemory(forceFullCollection: true), Environment.WorkingSet);
}
