using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;
using SQLitePCL;

namespace RackController.Service;

/// <summary>
/// Reads what a broken journal still gives: all that is remembered, every event that does not lie in the damaged part, and the sums of
/// days up to it. Samples and the record for replays stay where they are; a rack does not wait for those.
/// </summary>
internal static class JournalSalvage
{
    private const string Columns = "id, run, monotonic, wall, wall_trusted, kind, subject, what, because";
    private const int NumberColumns = 5;

    /// <summary>More events than a damaged part can hold; what comes after so many that are missing is not looked for.</summary>
    private const long LongestGap = 1 << 20;

    /// <summary>Opens a journal as if it were whole, also where the file is shorter than it says.</summary>
    /// <param name="path">Its file.</param>
    public static SqliteConnection Open(string path)
    {
        var connection = JournalFile.Connect(path, SqliteOpenMode.ReadOnly);
        try
        {
            using var trust = connection.CreateCommand();
            trust.CommandText = "PRAGMA writable_schema = ON";
            trust.ExecuteNonQuery();
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>What a journal remembers, as far as it can be read; null when nothing of it can.</summary>
    /// <param name="broken">An open journal, which may be read-only.</param>
    public static ControlMemory? MemoryIn(SqliteConnection broken)
    {
        var items = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);

        // From either end up to the damage.
        foreach (var order in (string[])["ASC", "DESC"])
        {
            foreach (var row in Rows(broken, $"SELECT key, value FROM memory ORDER BY key {order}"))
            {
                if (row is [string key, long value])
                {
                    items[key] = value;
                }
            }
        }

        var taken = Rows(broken, "SELECT saved_at, wall_trusted FROM memory_taken").FirstOrDefault();
        var savedAt = taken is [long at, _] && at > 0 && at < Instant.MaxValue.ToUnixTimeTicks() ? at : 0;
        return items.Count == 0
            ? null
            : new ControlMemory(Instant.FromUnixTimeTicks(savedAt), savedAt > 0 && taken is [_, 1L], items.ToImmutable());
    }

    /// <summary>The number of the last run.</summary>
    /// <param name="broken">An open journal, which may be read-only.</param>
    public static long LastRunIn(SqliteConnection broken) =>
        Rows(broken, "SELECT CAST(value AS INTEGER) FROM meta WHERE key = 'run'").FirstOrDefault() is [long run and >= 0] ? run : 0;

    /// <summary>The events that can be read, by their numbers: number, run, the two times, whether the wall clock was trusted, and what
    /// happened in words.</summary>
    /// <param name="broken">An open journal, which may be read-only.</param>
    public static IEnumerable<object[]> EventsIn(SqliteConnection broken)
    {
        var last = 0L;
        for (long? from = 1; from is not null; from = BeyondDamage(broken, last))
        {
            // What lies between the damage and where reading succeeds again is found from behind.
            var behind = Rows(broken, $"SELECT {Columns} FROM events WHERE id < {from} AND id > {last} ORDER BY id DESC");
            foreach (var row in behind.TakeWhile(row => IsEventAfter(last, row)).Reverse())
            {
                last = (long)row[0];
                yield return row;
            }

            var isWhole = false;
            foreach (var row in Rows(broken, $"SELECT {Columns} FROM events WHERE id >= {from} ORDER BY id", () => isWhole = true))
            {
                if (!IsEventAfter(last, row))
                {
                    isWhole = false;
                    break;
                }

                last = (long)row[0];
                yield return row;
            }

            if (isWhole)
            {
                yield break;
            }

            last = Math.Max(last, from.Value - 1);
        }
    }

    /// <summary>The sums of days, up to the first that cannot be read; none in a journal from before there were any.</summary>
    /// <param name="broken">An open journal, which may be read-only.</param>
    public static IEnumerable<DaySum> DaysIn(SqliteConnection broken)
    {
        foreach (var row in Rows(
            broken, "SELECT day, subject, figure, least, mean, most FROM days JOIN day_series ON day_series.id = series ORDER BY day"))
        {
            if (row is [long day and >= 0 and < int.MaxValue / 2000, string subject, string figure, double least, double mean, double most]
                && IsLegible(subject) && Enum.TryParse<DayFigure>(figure, out var known))
            {
                yield return new DaySum(DayRows.DayOf(day), subject, known, least, mean, most);
            }
        }
    }

    /// <summary>Where events can be read again; null when there are none. The steps grow so slowly that none passes over a page.</summary>
    private static long? BeyondDamage(SqliteConnection broken, long last)
    {
        for (var step = 1L; step <= LongestGap; step += 1 + step / 16)
        {
            var canBeRead = false;
            var next = $"SELECT id FROM events WHERE id > {last + step} ORDER BY id LIMIT 1";
            var found = Rows(broken, next, () => canBeRead = true).ToList();
            if (canBeRead)
            {
                return found is [[long id]] && id > last + step ? id : null;
            }
        }

        return null;
    }

    private static bool IsEventAfter(long last, object[] row) =>
        row[0] is long id && id > last && id - last <= 2 * LongestGap && row.Take(NumberColumns).All(value => value is long)
        && row[NumberColumns] is string kind && Enum.TryParse<EventKind>(kind, out _) && row.Skip(NumberColumns).All(IsLegible);

    /// <summary>Neither the zeros that fill a page that ends too early nor the bytes of something else are words.</summary>
    private static bool IsLegible(object value) =>
        value is string words && !words.Any(letter => char.IsControl(letter) || letter == '\uFFFD');

    /// <summary>The rows of a query up to the first that cannot be read.</summary>
    /// <param name="broken">An open journal.</param>
    /// <param name="sql">The query.</param>
    /// <param name="atEnd">Called when all could.</param>
    private static IEnumerable<object[]> Rows(SqliteConnection broken, string sql, Action? atEnd = null)
    {
        using var command = broken.CreateCommand();
        command.CommandText = sql;
        using var reader = Try(command.ExecuteReader);
        while (reader is not null)
        {
            var row = Try(() => reader.Read() ? Values(reader) : []);
            if (row is null)
            {
                yield break;
            }

            if (row.Length == 0)
            {
                atEnd?.Invoke();
                yield break;
            }

            yield return row;
        }
    }

    private static object[] Values(SqliteDataReader reader)
    {
        var values = new object[reader.FieldCount];
        reader.GetValues(values);
        return values;
    }

    /// <summary>What is asked for; null where the damage does not give it. A file that somebody else holds is not damaged.</summary>
    private static T? Try<T>(Func<T> ask)
        where T : class
    {
        try
        {
            return ask();
        }
        catch (Exception e) when (JournalMemory.IsNonsense(e) || e is SqliteException { SqliteErrorCode: not raw.SQLITE_BUSY })
        {
            return null;
        }
    }
}
