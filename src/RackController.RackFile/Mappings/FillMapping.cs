using System.Collections.Immutable;
using NodaTime;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>When a fill is over, as written.</summary>
/// <param name="Limit">How long it may take.</param>
/// <param name="UntilFull">Whether it ends when the trays read full.</param>
/// <param name="FullDepthMm">The depth that counts as full; null for the default.</param>
internal sealed record FillPart(Duration Limit, bool UntilFull, double? FullDepthMm);

/// <summary>Reads when a fill is over: a time, or a limit within which the trays must read full.</summary>
internal sealed class FillMapping : Mapping<FillPart>
{
    private static readonly Key<Duration> timeKey = Key.Optional("for", Values.Duration("5 s", "2 h"), "How long to fill.");

    private static readonly Key<Duration> withinKey = Key.Optional(
        "until-full-within", Values.Duration("5 s", "2 h"),
        "Fill until every tray that has a full float or a level reads full, and at most so long.");

    private static readonly Key<double> fullDepthKey = Key.Optional(
        "full-depth", Values.Length,
        "With `until-full-within`: the tray level that counts as full. Without it: 5 mm below the lowest standpipe.");

    /// <inheritdoc/>
    public override string Name => "fill";

    /// <inheritdoc/>
    public override string Doc => "When a fill is over: after a time, or when the trays read full.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [timeKey, withinKey, fullDepthKey];

    /// <inheritdoc/>
    protected override Key? Shorthand => timeKey;

    /// <inheritdoc/>
    protected override FillPart? Build(MappingReader keys)
    {
        if (keys.Has(timeKey) == keys.Has(withinKey) || (keys.Has(fullDepthKey) && keys.Has(timeKey)))
        {
            keys.Complaints.Refuse(
                keys.Place, "not one way to end a fill",
                "write a time, such as `fill: 5 min`, or `until-full-within` with a limit");
            return null;
        }

        return new FillPart(keys.FindValue(timeKey) ?? keys.Get(withinKey), keys.Has(withinKey), keys.FindValue(fullDepthKey));
    }
}
