using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>What a file says of works of upkeep, of one rack or of all.</summary>
/// <param name="Rules">What it says, each work once.</param>
internal sealed record UpkeepPart(ImmutableArray<UpkeepRule> Rules)
{
    /// <summary>What holds for a rack: its own rules, and those of the site where its own say nothing.</summary>
    /// <param name="own">Its own; null where it has none.</param>
    /// <param name="ofAll">Those of the site; null where it has none.</param>
    public static ImmutableArray<UpkeepRule> Over(UpkeepPart? own, UpkeepPart? ofAll) =>
        [.. (own?.Rules ?? []).Concat(ofAll?.Rules ?? []).DistinctBy(rule => rule.Work)];
}

/// <summary>Reads how often works of upkeep are due.</summary>
internal sealed class UpkeepMapping : Mapping<UpkeepPart>
{
    private static readonly UpkeepIntervalKind kind = new();

    private static readonly ImmutableArray<(UpkeepWork Work, Key<UpkeepInterval?> Key)> declared =
    [
        Of(UpkeepWork.Screen, "How often the screen at the pump's intake is rinsed."),
        Of(UpkeepWork.Flush, "How often riser and branches are flushed."),
        Of(UpkeepWork.Reservoir, "How often the reservoir's water is changed."),
        Of(UpkeepWork.Floats, "How often the floats are wiped."),
        Of(UpkeepWork.Standpipes, "How often standpipes and weeps are cleared."),
        Of(UpkeepWork.Pump, "How often the pump is opened, cleaned and looked at."),
    ];

    /// <inheritdoc/>
    public override string Name => "upkeep";

    /// <inheritdoc/>
    public override string Doc => "How often works of upkeep are due. What is left out is due as the media suggests.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [.. declared.Select(one => one.Key)];

    /// <inheritdoc/>
    protected override UpkeepPart? Build(MappingReader keys) =>
        new([.. declared.Where(one => keys.Has(one.Key)).Select(one => new UpkeepRule(one.Work, keys.Get(one.Key)))]);

    private static (UpkeepWork Work, Key<UpkeepInterval?> Key) Of(UpkeepWork work, string doc) =>
        (work, Key.Optional(work.Key(), kind, $"{doc} Without it: as the media suggests."));
}
