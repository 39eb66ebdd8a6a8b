using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Runs a scenario from its start to its end, with every judge, hazard watch and recorder looking on.</summary>
public sealed class ScenarioRun
{
    // As many points as a chart of the whole run can use, were the trays always wet; many racks make do with fewer each.
    private const double LooksInAFloodedRun = 20_000;
    private const double LeastLooksInAFloodedRun = 1_000;
    private static readonly Duration ShortestLook = Duration.FromSeconds(1);
    private const double ToleratedDriftL = 0.001;
    private readonly Scenario scenario;
    private readonly Site site;
    private readonly VirtualRun run;
    private readonly Judge[] judges;
    private readonly IHazardWatch[] watches;
    private readonly HazardBook hazards;
    private readonly FloodRecorder[] floods;
    private readonly DaySums days;
    private readonly ReservoirRecorder[] reservoirs;
    private readonly CircuitRecorder[] circuits;
    private readonly double[] balanceAtStartL;
    private readonly RunCharts charts;
    private readonly EventCounts counts;

    private ScenarioRun(Scenario scenario, bool leaps)
    {
        this.scenario = scenario;
        site = scenario.Site;
        run = new VirtualRun(
            site, scenario.Start, scenario.Events, Found(scenario), scenario.Room, leaps)
        {
            LookAtMovingWaterEvery = Duration.Max(
                ShortestLook, scenario.Length / Math.Max(LeastLooksInAFloodedRun, LooksInAFloodedRun / site.Racks.Length)),
        };
        run.Watch(RunLevels.Of(scenario));
        judges = [.. scenario.Expectations.Select(Judge.For)];
        hazards = new HazardBook(run.Log);
        watches = HazardWatches.Of(site);
        floods = [.. site.Racks.Select(rack => new FloodRecorder(rack))];
        days = new DaySums(site);
        reservoirs = [.. site.Racks.Select(rack => new ReservoirRecorder(rack))];
        circuits = [.. site.Circuits.Select(circuit => new CircuitRecorder(circuit))];
        balanceAtStartL = [.. site.Racks.Select(rack => run.Plant.Racks[rack.Id.Index].BalanceL)];
        charts = new RunCharts(site);
        counts = new EventCounts(site);
        run.Log.Forgets = counts.Forget;
    }

    /// <summary>Runs a scenario.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="progress">Told now and then which share of the run is done; null when nobody wants to know.</param>
    /// <param name="everyScan">Whether to make every scan of the grid rather than leap over quiet times. Far slower; comes
    /// to the same.</param>
    public static RunResult Run(Scenario scenario, Action<double>? progress = null, bool everyScan = false)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return new ScenarioRun(scenario, !everyScan).ToTheEnd(progress);
    }

    private static PlantStart Found(Scenario scenario) => scenario.Room?.At(scenario.Start, scenario.Site.Zone) is { } air
        ? scenario.Found with { RoomC = air.AirC, RoomHumidityPercent = air.HumidityPercent }
        : scenario.Found;

    private RunResult ToTheEnd(Action<double>? progress)
    {
        var end = MonotonicTime.Zero + scenario.Length;
        var told = 0;
        run.Begin();
        Look();
        while (run.Step(end))
        {
            Look();
            var percent = (int)(100 * (run.Now.Elapsed / scenario.Length));
            if (percent > told)
            {
                told = percent;
                progress?.Invoke(percent / 100.0);
            }
        }

        charts.Close(run.Now);
        NoWaterCameOrWent();
        return Result();
    }

    private void Look()
    {
        var now = run.Now;
        foreach (var recorder in floods)
        {
            if (recorder.Look(now))
            {
                run.CountFlood(recorder.Rack);
            }
        }

        if (now.DayClosed is { } day)
        {
            days.Count(day);
        }

        foreach (var reservoir in reservoirs)
        {
            reservoir.Look(now);
        }

        foreach (var circuit in circuits)
        {
            circuit.Look(now);
        }

        foreach (var judge in judges)
        {
            judge.Look(now, run.Log);
        }

        foreach (var watch in watches)
        {
            watch.Look(now, hazards);
        }

        charts.Look(now);
    }

    // Every judge relies on the simulated water: if it did not add up, no verdict would mean anything.
    private void NoWaterCameOrWent()
    {
        foreach (var rack in site.Racks)
        {
            var driftL = Math.Abs(run.Plant.Racks[rack.Id.Index].BalanceL - balanceAtStartL[rack.Id.Index]);
            Invariant.Holds(driftL < ToleratedDriftL, $"the simulated water of {rack.Name} adds up (it is {driftL:0.000} L out)");
        }
    }

    private RunResult Result()
    {
        foreach (var recorder in floods)
        {
            recorder.Close();
        }

        foreach (var entry in run.Log.Entries)
        {
            counts.Count(entry);
        }

        return new RunResult(charts)
        {
            Scenario = scenario,
            Verdicts = [.. judges.Select(judge => judge.Close(run.Now))],
            Hazards = hazards.Hazards,
            Floods = [.. floods.SelectMany(recorder => recorder.Records)],
            FloodTotals = [.. floods.Select(recorder => recorder.Totals)],
            Racks = [.. site.Racks.Select(Totals)],
            Loads = Totals(run.Loads.Total, run.Loads.SwitchedOn),
            Circuits =
            [
                .. circuits.Select((circuit, index) => circuit.Record(run.Plant.Circuits[index].EnergyKWh)),
            ],
            Trips = counts.Trips,
            Alarms = counts.Alarms,
            Log = run.Log.Entries,
            Earlier = counts.Earlier,
            Scans = run.Scans,
            PlantSteps = run.Plant.Racks.Sum(rack => rack.Steps),
        };
    }

    private RackTotals Totals(Rack rack) => new(
        rack.Id, run.Plant.Racks[rack.Id.Index].WaterUsedL, run.Now.SpilledL(rack.Id), reservoirs[rack.Id.Index].Record(),
        [.. rack.Tiers.Select(days.Light)])
    {
        DripTrayL = run.Plant.Racks[rack.Id.Index].DripTrayL,
        WiredFloatOpenedAfter = run.Plant.Racks[rack.Id.Index].FloatCutoutFirstOpenedAt - MonotonicTime.Zero,
        WiredTimeRelayOpenedAfter = run.Plant.Racks[rack.Id.Index].TimeCutoutFirstOpenedAt - MonotonicTime.Zero,
    };

    private ImmutableArray<LoadTotals> Totals(ImmutableArray<Duration> powered, ImmutableArray<int> switchedOn) =>
    [
        .. site.Loads.Select(load => new LoadTotals(
            load.Id, powered[load.Id.Index], switchedOn[load.Id.Index], run.Plant.Loads[load.Id.Index].EnergyKWh)),
    ];
}
