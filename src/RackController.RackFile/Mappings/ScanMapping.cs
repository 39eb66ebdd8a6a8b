using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>Reads how often the site is scanned.</summary>
internal sealed class ScanMapping : Mapping<ScanTiming>
{
    private static readonly Key<Duration> periodKey = Key.Defaulted(
        "period", Values.Duration("20 ms", "1 s", "faster wears the board and slower lets water run on"), "100 ms",
        "From the start of one scan to the next.");

    private static readonly Key<Duration> lateAfterKey = Key.Defaulted(
        "late-after",
        Values.Duration("300 ms", "10 s", "a busy board is late by 150 ms without harm, and 10 s without a look is no control"),
        "1 s", "A gap between two scans longer than this puts every load in its safe state.");

    /// <inheritdoc/>
    public override string Name => "scan";

    /// <inheritdoc/>
    public override string Doc => "How often the controller looks at the racks, and when a look is too late.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [periodKey, lateAfterKey];

    /// <inheritdoc/>
    protected override ScanTiming? Build(MappingReader keys)
    {
        var timing = new ScanTiming(keys.Get(periodKey), keys.Get(lateAfterKey));
        if (timing.LateAfter < timing.Period * 3)
        {
            keys.Refuse(
                lateAfterKey, "less than three scan periods",
                "write at least three times the period, so that one slow scan is no alarm");
            return null;
        }

        return timing;
    }
}
