using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>A pump as written.</summary>
/// <param name="Load">Its relay and nameplate.</param>
/// <param name="Curve">What it can lift.</param>
internal sealed record PumpPart(LoadPart Load, PumpCurve Curve);

/// <summary>A point of a pump curve as written.</summary>
/// <param name="FlowLpm">Flow, L/min.</param>
/// <param name="HeadM">Head, m.</param>
internal sealed record PumpPoint(double FlowLpm, double HeadM);

/// <summary>Reads a pump: one rated point, or three points of its curve.</summary>
internal sealed class PumpMapping : Mapping<PumpPart>
{
    private static readonly Key<PumpPoint> ratedKey = Key.Optional(
        "rated", new PumpPointMapping(),
        "One point of its curve. Head at no flow is then taken as 4/3 of its head, and flow at no head as twice its flow.");

    private static readonly Key<ImmutableArray<PumpPoint>> curveKey = Key.Optional(
        "curve", Values.List(new PumpPointMapping(), "point", 3),
        "Three points of its curve, the first at no flow. Write this or `rated`.");

    /// <inheritdoc/>
    public override string Name => "pump";

    /// <inheritdoc/>
    public override string Doc => "The pump: what it can lift, its nameplate and its relay.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [ratedKey, curveKey, .. LoadKeys.Pump.All];

    /// <inheritdoc/>
    protected override PumpPart? Build(MappingReader keys)
    {
        var load = LoadKeys.Pump.Read(keys);
        var curve = ReadCurve(keys);
        return load is null || curve is null ? null : new PumpPart(load with { ShortName = "pump" }, curve);
    }

    private static PumpCurve? ReadCurve(MappingReader keys)
    {
        if (keys.Has(ratedKey) == keys.Has(curveKey))
        {
            keys.Complaints.Refuse(
                keys.Place, keys.Has(ratedKey) ? "both `rated` and `curve`" : "a pump that does not say what it can lift",
                "write one point, such as `rated: { flow: 30 L/min, head: 2 m }`, or three as `curve`");
            return null;
        }

        var isRated = keys.Has(ratedKey);
        var curve = isRated
            ? PumpCurves.ThroughOnePoint(keys.Get(ratedKey))
            : PumpCurves.ThroughThreePoints(keys.Get(curveKey));
        if (curve is null && isRated)
        {
            keys.Refuse(ratedKey, "a rated point without flow or without head", "write a point at which the pump does both");
        }
        else if (curve is null)
        {
            keys.Refuse(
                curveKey, "points that no falling curve passes through",
                "write three points with rising flow and falling head, the first at `0 L/min`");
        }

        return curve;
    }
}

/// <summary>Reads a point of a pump curve.</summary>
internal sealed class PumpPointMapping : Mapping<PumpPoint>
{
    private static readonly Key<double> flowKey = Key.Required("flow", Values.Flow, "Flow at this point.");

    private static readonly Key<double> headKey = Key.Required("head", Values.Head, "Height that it lifts this flow to.");

    /// <inheritdoc/>
    public override string Name => "pump point";

    /// <inheritdoc/>
    public override string Doc => "A point of a pump curve.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [flowKey, headKey];

    /// <inheritdoc/>
    protected override PumpPoint? Build(MappingReader keys) => new(keys.Get(flowKey), keys.Get(headKey) / 1000);
}
