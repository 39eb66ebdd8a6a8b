using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// Reads what a journal tells of the past, while the service writes it: on a connection of its own, which can only read. The tables have
/// no index by time, since that would cost the card with every sample what it saves with the few that are looked at: rows lie in the
/// order in which they were written, so they are read from the newest back to the time that is asked for. A clock that was set moves
/// rows; so reading goes on for a while beyond the first row that is too old.
/// </summary>
public sealed class JournalHistory : IDisposable
{
    /// <summary>So many rows in a row, all of them too old, end the search: hours of samples, a week of events.</summary>
    private const int MostTooOld = 5_000;

    private const string EventColumns = "id, run, monotonic, wall, wall_trusted, kind, subject, what, because";

    private readonly SqliteConnection connection;

    private JournalHistory(SqliteConnection connection) => this.connection = connection;

    /// <summary>Opens the journal of a state folder.</summary>
    /// <param name="path">Its file.</param>
    /// <exception cref="CouldNotRunException">There is none, or it cannot be read: one line that says why.</exception>
    public static JournalHistory Open(string path)
    {
        if (!File.Exists(path))
        {
            throw new CouldNotRunException("there is no journal: look whether the alarm controller/journal stands, and why");
        }

        SqliteConnection? connection = null;
        try
        {
            (connection, var version) = Connect(path);
            if (version is null or > JournalSchema.Version)
            {
                throw new CouldNotRunException("the journal is of another version of this program: start the service anew");
            }

            return new JournalHistory(connection);
        }
        catch (Exception e)
        {
            connection?.Dispose();
            if (e is SqliteException || JournalMemory.IsNonsense(e))
            {
                throw Unreadable(e);
            }

            throw;
        }
    }

    /// <summary>What sensors said in a span, newest first. Measured values are kept once a minute, contacts when they change.</summary>
    /// <param name="span">The span.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public IEnumerable<Sample> SamplesIn(HistorySpan span)
    {
        var names = Rows("SELECT id, name FROM sensors", row => (Id: row.GetInt64(0), Name: row.GetString(1)))
            .ToDictionary(sensor => sensor.Id, sensor => sensor.Name);
        var rows = Rows(
            "SELECT wall, sensor, value FROM samples ORDER BY rowid DESC",
            row => (At: Time(row.GetInt64(0)), Sensor: row.GetInt64(1), Value: row.IsDBNull(2) ? (double?)null : row.GetDouble(2)));
        return Within(rows, span, row => row.At)
            .Where(row => names.ContainsKey(row.Sensor))
            .Select(row => new Sample(row.At, names[row.Sensor], row.Value));
    }

    /// <summary>What happened in a span, newest first.</summary>
    /// <param name="span">The span.</param>
    /// <param name="kinds">What sort of things; none for all.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public IEnumerable<KeptEvent> EventsIn(HistorySpan span, params ReadOnlySpan<EventKind> kinds)
    {
        var sorts = string.Join(",", kinds.ToArray().Select(kind => $"'{kind}'"));
        var only = sorts.Length > 0 ? $"WHERE kind IN ({sorts})" : "";
        return Within(Rows($"SELECT {EventColumns} FROM events {only} ORDER BY id DESC", Event), span, kept => kept.Event.At.Wall);
    }

    /// <summary>Everything that happened, newest first, without an end: whoever reads says when it is enough.</summary>
    /// <param name="kind">What sort of things.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public IEnumerable<KeptEvent> EventsBackwards(EventKind kind) =>
        Rows($"SELECT {EventColumns} FROM events WHERE kind = $1 ORDER BY id DESC", Event, kind.ToString());

    /// <summary>What happened after an event, oldest first.</summary>
    /// <param name="number">The number of the event.</param>
    /// <param name="most">How many at most.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public IEnumerable<KeptEvent> EventsAfter(long number, int most) =>
        Rows($"SELECT {EventColumns} FROM events WHERE id > $1 ORDER BY id LIMIT $2", Event, number, most);

    /// <summary>A page of what happened, newest first.</summary>
    /// <param name="filter">Which.</param>
    /// <param name="before">The number of the event before which the page begins; null for the newest.</param>
    /// <param name="most">How many at most.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public ImmutableArray<KeptEvent> EventPage(EventFilter filter, long? before, int most)
    {
        ArgumentNullException.ThrowIfNull(filter);
        return
        [
            .. Rows(
                $"""
                SELECT {EventColumns} FROM events
                WHERE id < $1 AND ($2 IS NULL OR kind = $2)
                    AND ($3 IS NULL OR subject = $3 OR substr(subject, 1, length($3) + 1) = $3 || '/')
                ORDER BY id DESC LIMIT $4
                """,
                Event, before ?? long.MaxValue, filter.Kind?.ToString(), filter.Subject, (long)most),
        ];
    }

    /// <summary>When the first event that is on record was; null where there is none.</summary>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public Instant? Begins() =>
        Rows("SELECT wall FROM events ORDER BY id LIMIT 1", row => (Instant?)Time(row.GetInt64(0))).FirstOrDefault();

    /// <summary>The sums of days, oldest first, as far as this version knows what they are of.</summary>
    /// <param name="first">The first day.</param>
    /// <param name="last">The last day.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public IEnumerable<DaySum> Days(LocalDate first, LocalDate last) => Rows<DaySum?>(
        """
        SELECT day, subject, figure, least, mean, most FROM days JOIN day_series ON day_series.id = series
        WHERE day BETWEEN $1 AND $2 ORDER BY day
        """,
        row => Enum.TryParse<DayFigure>(row.GetString(2), out var figure)
            ? new DaySum(
                DayRows.DayOf(row.GetInt64(0)), row.GetString(1), figure, row.GetDouble(3), row.GetDouble(4), row.GetDouble(5))
            : null,
        DayRows.NumberOf(first), DayRows.NumberOf(last)).OfType<DaySum>();

    /// <summary>The last day that was summed up; null where none was.</summary>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public LocalDate? LastDay() => Rows("SELECT day FROM days ORDER BY day DESC LIMIT 1", row => (LocalDate?)DayRows.DayOf(row.GetInt64(0)))
        .FirstOrDefault();

    /// <summary>What the controller remembers from run to run; null where there is nothing.</summary>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public ControlMemory? Remembered() => Try(() => JournalMemory.In(connection));

    /// <summary>Lets go of the file.</summary>
    public void Dispose() => connection.Dispose();

    // Where this process may write nothing, a journal that nobody has open can only be read as one that nobody changes.
    private static (SqliteConnection Connection, long? Version) Connect(string path)
    {
        var connection = JournalFile.Connect(path, SqliteOpenMode.ReadOnly);
        try
        {
            return (connection, JournalSchema.VersionOf(connection));
        }
        catch (SqliteException e) when (e.SqliteErrorCode is SQLitePCL.raw.SQLITE_CANTOPEN or SQLitePCL.raw.SQLITE_READONLY)
        {
            connection.Dispose();
            connection = JournalGlance.OpenWithoutPermission(path);
            return (connection, JournalSchema.VersionOf(connection));
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    private static KeptEvent Event(SqliteDataReader row) => new(
        row.GetInt64(0), row.GetInt64(1),
        new ControlEvent(
            new Moment(new MonotonicTime(row.GetInt64(2)), Time(row.GetInt64(3)), row.GetInt64(4) != 0),
            Enum.Parse<EventKind>(row.GetString(5)), row.GetString(6), row.GetString(7), row.GetString(8)));

    private static Instant Time(long ticks) => Instant.FromUnixTimeTicks(ticks);

    private static CouldNotRunException Unreadable(Exception e) => new(
        $"the journal cannot be read ({e.Message.ReplaceLineEndings(" ").TrimEnd('.')}): the racks are driven all the same; when the "
        + "service starts anew it keeps the broken file and goes on with what can be read of it", e);

    private static IEnumerable<T> Within<T>(IEnumerable<T> rows, HistorySpan span, Func<T, Instant> at)
    {
        var tooOld = 0;
        foreach (var row in rows)
        {
            tooOld = at(row) < span.From ? tooOld + 1 : 0;
            if (tooOld > MostTooOld)
            {
                yield break;
            }

            if (span.Holds(at(row)))
            {
                yield return row;
            }
        }
    }

    /// <summary>The rows of a query, each read as soon as it is there.</summary>
    private IEnumerable<T> Rows<T>(string sql, Func<SqliteDataReader, T> read, params object?[] values)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        for (var i = 0; i < values.Length; i++)
        {
            command.Parameters.AddWithValue($"${i + 1}", values[i] ?? DBNull.Value);
        }

        using var rows = Try(command.ExecuteReader);
        while (true)
        {
            var next = Try(() => rows.Read() ? new Row<T>(read(rows)) : null);
            if (next is null)
            {
                yield break;
            }

            yield return next.Value;
        }
    }

    private static T Try<T>(Func<T> ask)
    {
        try
        {
            return ask();
        }
        catch (Exception e) when (e is SqliteException || JournalMemory.IsNonsense(e))
        {
            throw Unreadable(e);
        }
    }

    private sealed record Row<T>(T Value);
}
