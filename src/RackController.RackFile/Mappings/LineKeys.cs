using System.Collections.Immutable;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>The keys that say on which line a relay or contact sits.</summary>
/// <param name="lineDoc">What the line is.</param>
/// <param name="activeDoc">What its polarity means; null where it means nothing.</param>
internal sealed class LineKeys(string lineDoc, string? activeDoc)
{
    private readonly Key<WrittenLine> lineKey = Key.Optional(
        "line", Values.Line, lineDoc + " By its offset on the chip, or by its name.");

    private readonly Key<string> chipKey = Key.Optional(
        "chip", Values.Chip,
        "Label or number of the GPIO chip, or for a relay the name of a part with lines. Without it: the chip of the I/O section.");

    private readonly Key<bool>? activeKey =
        activeDoc is null ? null : Key.Optional("active", Values.Active, activeDoc + " Without it: as the I/O section says.");

    /// <summary>All of them.</summary>
    public ImmutableArray<Key> All => [lineKey, chipKey, .. activeKey is null ? (ImmutableArray<Key>)[] : [activeKey]];

    /// <summary>Reads a line.</summary>
    /// <param name="keys">A sound mapping that declares these keys.</param>
    public LinePart? Read(MappingReader keys) => keys.Find(lineKey) is { } line
        ? new LinePart(keys.At(lineKey), line, keys.Find(chipKey), activeKey is null ? null : keys.FindValue(activeKey))
        : null;
}
