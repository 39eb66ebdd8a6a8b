using System.Collections.Immutable;
using NodaTime;

namespace RackController.Service;

/// <summary>How many scans began how late, in classes, so that what is rare is seen too.</summary>
internal sealed class LatenessTally
{
    /// <summary>The upper ends of the classes; the last class has none.</summary>
    private static readonly ImmutableArray<Duration> ends =
        [.. new[] { 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500 }.Select(ms => Duration.FromMilliseconds(ms))];

    private readonly long[] counts = new long[ends.Length + 1];
    private Duration total;

    /// <summary>Counts a scan; allocates nothing.</summary>
    public void Count(Duration lateBy)
    {
        var at = 0;
        while (at < ends.Length && lateBy > ends[at])
        {
            at++;
        }

        counts[at]++;
        total += lateBy;
    }

    /// <summary>The tally so far.</summary>
    public ScanLateness Read() => new(ends, [.. counts], total);
}

/// <summary>How late scans began.</summary>
/// <param name="ClassEnds">The upper end of each class but the last, which has none.</param>
/// <param name="Counts">How many scans fell into each class.</param>
/// <param name="Total">All lateness together.</param>
public sealed record ScanLateness(ImmutableArray<Duration> ClassEnds, ImmutableArray<long> Counts, Duration Total);
