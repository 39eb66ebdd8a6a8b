using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Watches whether the water moves that a rack's pump should move: within a time of its start flow must show, the reservoir fall or a
/// tray rise. One sensor that sees it is enough. One that saw flow and sees it no more for as long takes it back, as for a pump that
/// draws air. Full floats close late, so they speak for a fill at any time, and against one only when the run is over and nothing
/// else could tell. A pump that draws far more than its nameplate is held fast and moves nothing. Whoever stood still, to the last
/// bit, while another saw the water move is doubted.
/// </summary>
internal sealed class FillWatch
{
    /// <summary>A fill is seen from this share on of what the pump moves at most; less is leakage, noise or air.</summary>
    private const double LeastShare = 0.1;

    private const double LeastMm = 1;
    private const double TrayRiseMm = 3;

    // A rotor that is held fast draws what it draws in its first moments, several times its nameplate; common practice, no source.
    private const double StalledShare = 2;
    private static readonly Duration stallsFor = Duration.FromSeconds(5);

    private readonly Rack rack;
    private readonly PumpRun run;
    private readonly ImmutableArray<FillSense> senses;
    private readonly ImmutableArray<FlowSense> flows;
    private readonly FloatsClosing fullFloats;
    private readonly Duration within;
    private readonly Action<SensorId, string> doubt;
    private MonotonicTime ranFrom;
    private bool isJudged;
    private bool isRested;
    private bool sawFlow;
    private MonotonicTime? flowLostAt;
    private readonly Limit? stalled;
    private MonotonicTime? stalledSince;

    public FillWatch(
        Site site, Rack rack, MonotonicTime start, ICollection<SensorLevel> levels, Action<SensorId, string> doubt)
    {
        this.rack = rack;
        this.doubt = doubt;
        within = rack.Limits.NoFillWithin;
        run = new PumpRun(rack.Pump.Load, start);
        var own = site.Sensors.Where(sensor => sensor.Rack == rack.Id).ToImmutableArray();
        var leastLpm = LeastShare * rack.Pump.Curve.MaxFlowLpm;
        var fallMm = Math.Max(LeastMm, leastLpm * within.TotalMinutes / rack.Reservoir.AreaM2);
        flows =
        [
            .. own.Where(sensor => sensor.Kind == SensorKind.PumpFlow)
                .Select(sensor => new FlowSense(sensor, new Limit(sensor.Id, leastLpm, levels))),
        ];
        senses =
        [
            .. flows,
            .. own.Where(sensor => sensor.Kind == SensorKind.ReservoirLevel).Select(sensor => new LevelSense(sensor, -fallMm, 0)),
            .. own.Where(sensor => sensor.Kind == SensorKind.TrayLevel)
                .Select(sensor => new LevelSense(sensor, TrayRiseMm, FloodTray.DrainedBelowMm)),
        ];
        var pump = site[rack.Pump.Load];
        stalled = own.FirstOrDefault(sensor => sensor.Kind == SensorKind.PumpCurrent) is { } current
            ? new Limit(current.Id, StalledShare * pump.CurrentA(site[pump.Circuit].VoltageV), levels)
            : null;
        fullFloats = new FloatsClosing([.. own.Where(sensor => sensor.Kind == SensorKind.TrayFullFloat)]);
    }

    /// <summary>What was seen of the present run, or of the last.</summary>
    public FillSight Sight { get; private set; }

    /// <summary>Looks at the rack once in a scan.</summary>
    public void Look(Facts facts, Agenda agenda)
    {
        var switched = run.Follow(facts);
        if (switched)
        {
            Switch(facts);
        }

        if (run.IsRunning)
        {
            WatchRun(facts, agenda);
        }
        else
        {
            WatchRest(facts, agenda);
        }
    }

    private void Switch(Facts facts)
    {
        (isJudged, isRested, stalledSince) = (false, false, null);
        if (run.IsRunning)
        {
            Sight = FillSight.Awaited;
            ranFrom = run.Since;
            (sawFlow, flowLostAt) = (false, null);
            fullFloats.Begin(facts);
            foreach (var sense in senses)
            {
                sense.Begin(facts, run.Since);
            }
        }
        else if (Sight is FillSight.Awaited or FillSight.Unseeable)
        {
            // Full floats had all the time that a fill may take.
            var hadTime = rack.Schedule.Floods.Fill is FillUntilFull fill && run.Since - ranFrom >= fill.Limit;
            Sight = hadTime && fullFloats.CouldTell(facts) ? FillSight.NotSeen : FillSight.Unseeable;
        }
    }

    private void WatchRun(Facts facts, Agenda agenda)
    {
        if (IsStalled(facts, agenda))
        {
            Sight = FillSight.NotSeen;
            return;
        }

        var due = run.Since + within;
        if (fullFloats.AnyHasClosed(facts) && Sight is FillSight.Awaited or FillSight.Unseeable)
        {
            Sight = FillSight.Seen;
        }

        if (!isJudged && facts.Now.Monotonic < due)
        {
            agenda.Add(due);
        }
        else if (!isJudged)
        {
            isJudged = true;
            Judge(facts, due);
        }

        if (sawFlow && Sight == FillSight.Seen)
        {
            WatchFlow(facts, agenda);
        }
    }

    private bool IsStalled(Facts facts, Agenda agenda)
    {
        if (stalled is not { } limit || !facts.IsKnown(limit.Sensor) || !facts.IsAbove(limit))
        {
            stalledSince = null;
            return false;
        }

        var known = (stalledSince ??= facts.Now.Monotonic) + stallsFor;
        if (facts.Now.Monotonic >= known)
        {
            return true;
        }

        agenda.Add(known);
        return false;
    }

    private void Judge(Facts facts, MonotonicTime due)
    {
        var (anySees, anyCanTell) = (Sight == FillSight.Seen, false);
        foreach (var sense in senses)
        {
            sense.Judge(facts, due);
            anySees |= sense.Sees;
            anyCanTell |= sense.CanTell;
        }

        foreach (var flow in flows)
        {
            sawFlow |= flow.Sees;
        }

        Sight = anySees ? FillSight.Seen : anyCanTell ? FillSight.NotSeen : FillSight.Unseeable;
        foreach (var sense in senses)
        {
            if (sense.StoodStill && anySees && !sense.Sees)
            {
                doubt(sense.Sensor, "stood still to the last bit while water moved");
            }
        }
    }

    private void WatchFlow(Facts facts, Agenda agenda)
    {
        var flowsNow = false;
        var anyKnown = false;
        foreach (var flow in flows)
        {
            flowsNow |= flow.FlowsNow(facts);
            anyKnown |= facts.IsKnown(flow.Sensor);
        }

        flowLostAt = flowsNow || !anyKnown ? null : flowLostAt ?? facts.Now.Monotonic;
        if (flowLostAt is not { } lost)
        {
            return;
        }

        if (facts.Now.Monotonic >= lost + within)
        {
            Sight = FillSight.NotSeen;
            return;
        }

        agenda.Add(lost + within);
    }

    private void WatchRest(Facts facts, Agenda agenda)
    {
        var due = run.Since + within;
        if (facts.Now.Monotonic < due)
        {
            agenda.Add(due);
            return;
        }

        foreach (var flow in flows)
        {
            flow.Rest(facts, isRested ? null : due);
        }

        isRested = true;
    }
}
