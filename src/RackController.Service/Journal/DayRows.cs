using Microsoft.Data.Sqlite;
using NodaTime;

namespace RackController.Service;

/// <summary>The rows of sums of days. Days are counted from 1970-01-01, which is 0.</summary>
internal static class DayRows
{
    private static readonly LocalDate zero = new(1970, 1, 1);

    /// <summary>The number of a day.</summary>
    public static long NumberOf(LocalDate day) => Period.DaysBetween(zero, day);

    /// <summary>The day of a number.</summary>
    public static LocalDate DayOf(long number) => zero.PlusDays((int)number);

    /// <summary>Puts sums into the tables, within the transaction that is open. A day that is summed up again replaces what was.</summary>
    public static void Put(SqliteConnection connection, IReadOnlyList<DaySum> sums)
    {
        using var addSeries = new Statement(
            connection, "INSERT OR IGNORE INTO day_series (subject, figure) VALUES ($subject, $figure)", "$subject", "$figure");
        using var put = new Statement(
            connection,
            """
            INSERT OR REPLACE INTO days
            SELECT $day, id, $least, $mean, $most FROM day_series WHERE subject = $subject AND figure = $figure
            """,
            "$day", "$least", "$mean", "$most", "$subject", "$figure");
        foreach (var sum in sums)
        {
            var figure = sum.Figure.ToString();
            addSeries.Run(sum.Subject, figure);
            put.Run(NumberOf(sum.Day), sum.Least, sum.Mean, sum.Most, sum.Subject, figure);
        }
    }
}
