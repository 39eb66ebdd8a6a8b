using System.Collections.Immutable;
using NodaTime;

namespace RackController.Control;

/// <summary>
/// What interlocks, floods and alarms must remember across a restart or power cut: latches, run totals, timers, the
/// last flood. Timers are kept as ages, because the monotonic clock starts anew; the time spent away is added only where
/// a trusted wall clock can tell it, and is taken as none where that is the worse assumption. Flat and named, so that a
/// journal can keep it and another version can read it.
/// </summary>
/// <param name="SavedAt">What the wall clock said when this was taken.</param>
/// <param name="WallTrusted">Whether the wall clock was trusted then.</param>
/// <param name="Items">Named numbers; durations in milliseconds.</param>
public sealed record ControlMemory(Instant SavedAt, bool WallTrusted, ImmutableSortedDictionary<string, long> Items)
{
    private readonly List<RememberedNumber>? asWritten;
    private ImmutableSortedDictionary<string, long>? sorted = Items;

    /// <summary>Takes what was written as it stands. Memory is taken between a float and its pump, so names are joined and sorted by
    /// whoever first asks for them.</summary>
    internal ControlMemory(Instant savedAt, bool wallTrusted, List<RememberedNumber> written)
        : this(savedAt, wallTrusted, ImmutableSortedDictionary<string, long>.Empty)
    {
        asWritten = written;
        sorted = null;
    }

    /// <summary>Named numbers; durations in milliseconds. From any thread.</summary>
    public ImmutableSortedDictionary<string, long> Items
    {
        get => sorted ??= Sorted(asWritten ?? []);
        init => sorted = value;
    }

    private static ImmutableSortedDictionary<string, long> Sorted(List<RememberedNumber> written)
    {
        var items = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        foreach (var (name, value) in written)
        {
            items[name.ToString()] = value;
        }

        return items.ToImmutable();
    }
}
