using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>What is seen of the water that a pump should move.</summary>
internal enum Sight
{
    Unseeable,
    Awaited,
    Seen,
    NotSeen,
}

/// <summary>Whether a fill is seen, worked out page by page from the beginning.</summary>
/// <param name="story">The chronicle.</param>
/// <param name="rack">The rack.</param>
internal sealed class PlainFill(Chronicle story, Rack rack)
{
    private readonly List<Sensor> flows = Of(story, rack, SensorKind.PumpFlow);
    private readonly List<Sensor> levels = Of(story, rack, SensorKind.ReservoirLevel, SensorKind.TrayLevel);
    private readonly List<Sensor> floats = Of(story, rack, SensorKind.TrayFullFloat);
    private readonly Sensor? current = Of(story, rack, SensorKind.PumpCurrent).FirstOrDefault();
    private readonly double leastLpm = 0.1 * rack.Pump.Curve.MaxFlowLpm;
    private readonly HashSet<SensorId> flowsAtRest = [];
    private HashSet<SensorId> dryAtStart = [];
    private int firstPage;
    private bool isJudged;
    private bool sawFlow;
    private MonotonicTime? flowLostAt;
    private MonotonicTime? stalledSince;
    private Sight sight;

    /// <summary>What is seen at every page.</summary>
    public static List<Sight> Sights(Chronicle story, Rack rack)
    {
        var sights = new List<Sight>();
        var fill = new PlainFill(story, rack);
        for (var page = 0; page <= story.Last; page++)
        {
            fill = story.IsFirstOfItsRun(page) ? new PlainFill(story, rack) : fill;
            fill.Read(page);
            sights.Add(fill.sight);
        }

        return sights;
    }

    private static List<Sensor> Of(Chronicle story, Rack rack, params SensorKind[] kinds) =>
        [.. story.Site.Sensors.Where(sensor => sensor.Rack == rack.Id && kinds.Contains(sensor.Kind))];

    private void Read(int page)
    {
        var pump = rack.Pump.Load;
        var runs = story.WasOn(pump, page);
        var ran = !story.IsFirstOfItsRun(page) && story.WasOn(pump, page - 1);
        if (runs && !ran)
        {
            Start(page);
        }
        else if (ran && !runs && sight is (Sight.Awaited or Sight.Unseeable))
        {
            var hadTime = rack.Schedule.Floods.Fill is FillUntilFull fill
                && At(page - 1) - At(firstPage - 1) >= fill.Limit;
            var couldTell = floats.Any(each => dryAtStart.Contains(each.Id) && Said(page, each) is not null);
            sight = hadTime && couldTell ? Sight.NotSeen : Sight.Unseeable;
        }

        if (runs)
        {
            Watch(page);
        }
        else if (At(page) >= story.OffSince(pump, page) + rack.Limits.NoFillWithin)
        {
            flowsAtRest.Clear();
            flowsAtRest.UnionWith(flows.Where(flow => Said(page, flow) >= leastLpm).Select(flow => flow.Id));
        }
    }

    private void Start(int page)
    {
        (sight, firstPage, isJudged, sawFlow, flowLostAt) = (Sight.Awaited, page, false, false, null);
        stalledSince = null;
        dryAtStart = [.. floats.Where(each => Said(page, each) == 0 && TakesPart(page, each)).Select(each => each.Id)];
    }

    private void Watch(int page)
    {
        var pump = story.Site[rack.Pump.Load];
        var isStalled = current is not null && Said(page, current) > 2 * pump.CurrentA(story.Site[pump.Circuit].VoltageV);
        stalledSince = isStalled ? stalledSince ?? At(page) : null;
        if (At(page) >= stalledSince + Duration.FromSeconds(5))
        {
            (sight, isJudged) = (Sight.NotSeen, true);
            return;
        }

        var hasClosed = floats.Any(each => dryAtStart.Contains(each.Id) && Said(page, each) == 1);
        sight = hasClosed && sight is (Sight.Awaited or Sight.Unseeable) ? Sight.Seen : sight;
        if (!isJudged && At(page) >= At(firstPage - 1) + rack.Limits.NoFillWithin)
        {
            Judge(page);
        }

        if (!sawFlow || sight != Sight.Seen)
        {
            return;
        }

        var known = flows.Where(flow => Said(page, flow) is not null).ToList();
        var isLost = known.Count > 0 && known.All(flow => Said(page, flow) < leastLpm);
        flowLostAt = isLost ? flowLostAt ?? At(page) : null;
        sight = At(page) >= flowLostAt + rack.Limits.NoFillWithin ? Sight.NotSeen : sight;
    }

    private void Judge(int page)
    {
        isJudged = true;
        var flowsThatTell = flows.Where(flow => Said(page, flow) is not null && !flowsAtRest.Contains(flow.Id)).ToList();
        var levelsThatTell = levels.Where(each =>
            Said(firstPage, each) is not null && Said(page, each) is not null && TakesPart(page, each)).ToList();
        sawFlow = flowsThatTell.Any(flow => Said(page, flow) >= leastLpm);
        var sawLevel = levelsThatTell.Any(each => HasMoved(each, Said(page, each)!.Value - Said(firstPage, each)!.Value));
        sight = sight == Sight.Seen || sawFlow || sawLevel ? Sight.Seen
            : flowsThatTell.Count + levelsThatTell.Count > 0 ? Sight.NotSeen
            : Sight.Unseeable;
    }

    private bool HasMoved(Sensor level, double byMm)
    {
        var fallMm = Math.Max(1, leastLpm * rack.Limits.NoFillWithin.TotalMinutes / rack.Reservoir.AreaM2);
        return level.Kind == SensorKind.TrayLevel ? byMm >= 3 : -byMm >= fallMm;
    }

    private double? Said(int page, Sensor sensor) => story.Pages[page].Believed[sensor.Id.Index];

    private bool TakesPart(int page, Sensor sensor) =>
        sensor.TierNumber is not { } tier || story.Pages[page].InUse[rack.Id.Index][tier - 1];

    private MonotonicTime At(int page) => story.Pages[page].At.Monotonic;
}
