using RackController.Model;

namespace RackController.Control;

/// <summary>
/// One sensor by which a fill is seen. What counts is a change since the pump started, never a state: a sensor that is stuck shows no
/// change, so it can neither pretend a fill nor, beside another that sees one, hide it.
/// </summary>
internal abstract class FillSense(Sensor sensor)
{
    /// <summary>The sensor.</summary>
    public SensorId Sensor { get; } = sensor.Id;

    /// <summary>Whether what it looks at takes part.</summary>
    protected bool TakesPart(Facts facts) =>
        sensor.TierNumber is not { } tier || facts.IsTierInUse(sensor.Rack!.Value, tier);

    /// <summary>Whether its word counts for this run: it could be believed when the pump started, and when it was judged.</summary>
    public bool CanTell { get; protected set; }

    /// <summary>Whether it saw water move when it was judged.</summary>
    public bool Sees { get; protected set; }

    /// <summary>Whether it said the same to the last bit before and after, although moving water must have changed it.</summary>
    public bool StoodStill { get; protected set; }

    /// <summary>The pump has started.</summary>
    /// <param name="facts">What the first scan that knows of it knows.</param>
    /// <param name="since">When it started.</param>
    public virtual void Begin(Facts facts, MonotonicTime since) => (CanTell, Sees, StoodStill) = (false, false, false);

    /// <summary>The time has come at which moving water must be seen.</summary>
    /// <param name="facts">What the first scan from then on knows.</param>
    /// <param name="due">That time.</param>
    public abstract void Judge(Facts facts, MonotonicTime due);
}

/// <summary>A level that falls in the reservoir or rises in a tray as the pump moves water.</summary>
/// <param name="sensor">The sensor.</param>
/// <param name="moves">How far moving water must move it, mm: below 0 downwards.</param>
/// <param name="wetFromMm">Below this, mm, it may stand still for want of water.</param>
internal sealed class LevelSense(Sensor sensor, double moves, double wetFromMm) : FillSense(sensor)
{
    private double? startMm;

    public override void Begin(Facts facts, MonotonicTime since)
    {
        base.Begin(facts, since);
        startMm = Sample(facts, since);
    }

    public override void Judge(Facts facts, MonotonicTime due)
    {
        if (startMm is not { } start || Sample(facts, due) is not { } end)
        {
            return;
        }

        CanTell = TakesPart(facts);
        Sees = CanTell && (end - start) / moves >= 1;
        StoodStill = end.Equals(start) && end >= wetFromMm;
    }

    private double? Sample(Facts facts, MonotonicTime due) => facts.TrySample(Sensor, due, out var value) ? value : null;
}

/// <summary>Flow from the pump. It is seen as it is, all the time; a meter that showed flow while the pump had long stood tells
/// nothing.</summary>
/// <param name="sensor">The sensor.</param>
/// <param name="least">What counts as flow.</param>
internal sealed class FlowSense(Sensor sensor, Limit least) : FillSense(sensor)
{
    private double? restLpm;
    private bool flowsAtRest;

    /// <summary>The pump has stood for long enough that no water moves.</summary>
    /// <param name="facts">What this scan knows.</param>
    /// <param name="due">Since when it has, at the first such scan; null at later ones.</param>
    public void Rest(Facts facts, MonotonicTime? due)
    {
        if (due is { } first)
        {
            restLpm = facts.TrySample(Sensor, first, out var value) ? value : null;
        }

        flowsAtRest = FlowsNow(facts);
    }

    /// <summary>Whether it can be believed and shows flow.</summary>
    public bool FlowsNow(Facts facts) => facts.IsKnown(Sensor) && !facts.IsBelow(least);

    public override void Judge(Facts facts, MonotonicTime due)
    {
        CanTell = facts.IsKnown(Sensor) && !flowsAtRest;
        Sees = CanTell && FlowsNow(facts);
        StoodStill = restLpm is { } rest && facts.TrySample(Sensor, due, out var flow) && flow.Equals(rest);
    }
}
