using System.Collections.Immutable;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>The keys that say on which line a relay or contact sits.</summary>
/// <param name="lineDoc">What the line is.</param>
/// <param name="activeDoc">What its polarity means; null where it means nothing.</param>
internal sealed class LineKeys(string lineDoc, string? activeDoc)
{
    private readonly Key<int> lineKey = Key.Optional("line", new WholeNumberKind("a line offset", 0, 1023), lineDoc);

    private readonly Key<string> chipKey = Key.Optional(
        "chip", Values.Label,
        "Label of the GPIO chip, or for a relay the name of a part with lines. Without it: the chip of the I/O section.");

    private readonly Key<bool>? activeKey =
        activeDoc is null ? null : Key.Optional("active", Values.Active, activeDoc + " Without it: as the I/O section says.");

    /// <summary>All of them.</summary>
    public ImmutableArray<Key> All => [lineKey, chipKey, .. activeKey is null ? (ImmutableArray<Key>)[] : [activeKey]];

    /// <summary>Reads a line.</summary>
    /// <param name="keys">A sound mapping that declares these keys.</param>
    public LinePart? Read(MappingReader keys) => keys.FindValue(lineKey) is { } offset
        ? new LinePart(keys.At(lineKey), offset, keys.Find(chipKey), activeKey is null ? null : keys.FindValue(activeKey))
        : null;
}
