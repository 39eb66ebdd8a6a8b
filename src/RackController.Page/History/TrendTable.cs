using System.Collections.Immutable;
using NodaTime;
using RackController.Service;

namespace RackController.Page;

/// <summary>Trends beside each other as a table: a row for each stretch of time.</summary>
internal static class TrendTable
{
    /// <summary>Puts trends of one span beside each other.</summary>
    /// <param name="trends">The trends, thinned to <paramref name="stretches"/>.</param>
    /// <param name="span">Their span.</param>
    /// <param name="stretches">Into how many stretches it is divided.</param>
    public static ImmutableArray<TrendRow> Of(IReadOnlyList<SensorTrend> trends, HistorySpan span, int stretches)
    {
        var rows = new SortedDictionary<int, TrendPoint?[]>();
        for (var column = 0; column < trends.Count; column++)
        {
            foreach (var point in trends[column].Points)
            {
                var place = span.StretchOf(point.At, stretches);
                if (!rows.TryGetValue(place, out var row))
                {
                    rows[place] = row = new TrendPoint?[trends.Count];
                }

                row[column] = point;
            }
        }

        return
        [
            .. rows.Select(
                row => new TrendRow(span.BeginOf(row.Key, stretches), span.BeginOf(row.Key + 1, stretches), [.. row.Value])),
        ];
    }
}

/// <summary>What sensors said in one stretch of time.</summary>
/// <param name="From">Its beginning.</param>
/// <param name="Until">Its end.</param>
/// <param name="Points">A point for each sensor; null where it said nothing.</param>
internal sealed record TrendRow(Instant From, Instant Until, ImmutableArray<TrendPoint?> Points);
