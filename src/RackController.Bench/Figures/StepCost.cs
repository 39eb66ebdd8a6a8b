using System.Diagnostics;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>What a step of the simulated rack's integration costs through one flood after another.</summary>
/// <param name="StepNs">Time, ns.</param>
/// <param name="Bytes">What it allocates once it is warm.</param>
public sealed record StepCost(double StepNs, double Bytes)
{
    private const int Floods = 200;

    internal static StepCost Of(Site site)
    {
        var cycle = new FloodCycles(site, PlantStart.Default);
        cycle.Run(Floods);
        var (steps, bytes) = (cycle.Steps, GC.GetAllocatedBytesForCurrentThread());
        var started = Stopwatch.GetTimestamp();
        cycle.Run(Floods);
        var took = Stopwatch.GetElapsedTime(started);
        steps = cycle.Steps - steps;
        return new StepCost(took.TotalNanoseconds / steps, (double)(GC.GetAllocatedBytesForCurrentThread() - bytes) / steps);
    }
}

/// <summary>Floods of a simulated rack without a controller: ten minutes of pumping with every valve open, and fifty of draining.</summary>
public sealed class FloodCycles
{
    private static readonly Duration pumping = Duration.FromMinutes(10);
    private static readonly Duration resting = Duration.FromMinutes(50);
    private readonly SimulatedSite plant;
    private readonly RelayCommands flood;
    private readonly RelayCommands rest;

    /// <summary>Builds the rack.</summary>
    /// <param name="site">A site of one rack.</param>
    /// <param name="start">How it begins.</param>
    public FloodCycles(Site site, PlantStart start)
    {
        ArgumentNullException.ThrowIfNull(site);
        plant = new SimulatedSite(site, start);
        rest = new RelayCommands(site);
        flood = new RelayCommands(site);
        foreach (var load in site.Loads)
        {
            flood[load.Id] = load.Kind is LoadKind.Pump or LoadKind.Valve ? SwitchState.On : load.SafeState;
        }
    }

    /// <summary>What is true of the rack.</summary>
    public RackTruth Rack => plant.Racks[0];

    /// <summary>How many steps the integration has taken.</summary>
    public long Steps => Rack.Steps;

    /// <summary>Lets so many floods pass.</summary>
    /// <param name="floods">How many.</param>
    /// <param name="looksEvery">How often to look on the way; null for not at all.</param>
    /// <param name="look">Who looks.</param>
    public void Run(int floods, Duration? looksEvery = null, Action? look = null)
    {
        for (var n = 0; n < floods; n++)
        {
            plant.Write(plant.Reached, flood);
            Pass(pumping, looksEvery ?? pumping, look);
            plant.Write(plant.Reached, rest);
            Pass(resting, looksEvery ?? resting, look);
        }
    }

    private void Pass(Duration length, Duration looksEvery, Action? look)
    {
        var end = plant.Reached + length;
        while (plant.Reached < end)
        {
            plant.AdvanceTo(MonotonicTime.Earlier(end, plant.Reached + looksEvery));
            look?.Invoke();
        }
    }
}
