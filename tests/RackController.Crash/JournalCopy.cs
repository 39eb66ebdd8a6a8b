using Microsoft.Data.Sqlite;

namespace RackController.Crash;

/// <summary>What a journal holds, read by its tables as a stranger would, from a copy: reading a journal whose process was killed
/// repairs it, and that is the next life's to do.</summary>
/// <param name="Run">The number of the last run. A life counts one more whenever it opens its journal again after trouble.</param>
/// <param name="Events">The events of all runs.</param>
/// <param name="Memory">What is remembered.</param>
/// <param name="SavedAt">When that was, by the wall clock.</param>
internal sealed record JournalCopy(
    long Run, IReadOnlyList<JournalEvent> Events, IReadOnlyDictionary<string, long> Memory, DateTimeOffset SavedAt)
{
    private const string AllEvents = "SELECT run, monotonic, wall, kind, subject, what, because FROM events ORDER BY id";

    private static readonly string[] Files = ["journal.db", "journal.db-wal"];

    /// <summary>Copies the files of a journal.</summary>
    public static void CopyFiles(string from, string to)
    {
        Directory.CreateDirectory(to);
        File.Delete(Path.Combine(to, "journal.db-shm"));
        foreach (var file in Files)
        {
            File.Delete(Path.Combine(to, file));
            if (File.Exists(Path.Combine(from, file)))
            {
                File.Copy(Path.Combine(from, file), Path.Combine(to, file));
            }
        }
    }

    /// <summary>Reads the journal of a state folder.</summary>
    /// <param name="folder">The state folder.</param>
    /// <param name="copyTo">A folder for the copy.</param>
    /// <returns>Null when there is none yet, or what is there is not sound.</returns>
    public static JournalCopy? Read(string folder, string copyTo)
    {
        CopyFiles(folder, copyTo);
        var path = Path.Combine(copyTo, Files[0]);
        if (!File.Exists(path))
        {
            return null;
        }

        try
        {
            using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
            connection.Open();
            var isSound = Rows(connection, "PRAGMA quick_check", row => row.GetString(0)) is ["ok"];
            var hasTables = isSound && Rows(connection, "SELECT count(*) FROM sqlite_schema", row => row.GetInt64(0)) is [> 0];
            return hasTables ? Read(connection) : null;
        }
        catch (Exception e) when (IsDamage(e))
        {
            // Not what any program wrote: a broken database, or one that holds what makes no sense.
            return null;
        }
    }

    /// <summary>Reads what a journal that is not sound gives from its beginning up to the first damage.</summary>
    /// <param name="folder">The state folder.</param>
    /// <param name="copyTo">A folder for the copy.</param>
    /// <returns>Its run, all that is remembered, and the events before the damage; null when run or memory cannot be read.</returns>
    public static JournalCopy? ReadUpToDamage(string folder, string copyTo)
    {
        CopyFiles(folder, copyTo);
        var events = new List<JournalEvent>();
        JournalCopy? read = null;
        try
        {
            using var connection = new SqliteConnection($"Data Source={Path.Combine(copyTo, Files[0])};Pooling=False");
            connection.Open();

            // Else SQLite refuses a file that is shorter than it says.
            Rows(connection, "PRAGMA writable_schema = ON", row => 0);
            read = Read(connection, "LIMIT 0") with { Events = events };
            Rows(connection, AllEvents, row => Collect(events, row));
            return read;
        }
        catch (Exception e) when (IsDamage(e))
        {
            return read;
        }
    }

    private static int Collect(List<JournalEvent> events, SqliteDataReader row)
    {
        events.Add(EventOf(row));
        return events.Count;
    }

    private static bool IsDamage(Exception e) =>
        e is SqliteException or InvalidOperationException or InvalidCastException or ArgumentException;

    private static JournalEvent EventOf(SqliteDataReader row) => new(
        row.GetInt64(0), TimeSpan.FromTicks(row.GetInt64(1) / 100), TimeOf(row.GetInt64(2)), row.GetString(3), row.GetString(4),
        row.GetString(5), row.GetString(6));

    private static JournalCopy Read(SqliteConnection connection, string events = "")
    {
        var run = Rows(connection, "SELECT CAST(value AS INTEGER) FROM meta WHERE key = 'run'", row => row.GetInt64(0)).Single();
        return new JournalCopy(
            run,
            Rows(connection, $"{AllEvents} {events}", EventOf),
            Rows(connection, "SELECT key, value FROM memory", row => KeyValuePair.Create(row.GetString(0), row.GetInt64(1)))
                .ToDictionary(),
            Rows(
                connection, "SELECT saved_at FROM memory_taken",
                row => TimeOf(row.GetInt64(0))).SingleOrDefault());
    }

    private static DateTimeOffset TimeOf(long ticks) => DateTimeOffset.UnixEpoch + TimeSpan.FromTicks(ticks);

    private static List<T> Rows<T>(SqliteConnection connection, string sql, Func<SqliteDataReader, T> read)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var rows = command.ExecuteReader();
        var found = new List<T>();
        while (rows.Read())
        {
            found.Add(read(rows));
        }

        return found;
    }
}

/// <summary>An event as it was kept.</summary>
/// <param name="Run">In which run.</param>
/// <param name="At">When, by the monotonic clock of its life.</param>
/// <param name="Wall">When, by the wall clock.</param>
/// <param name="Kind">What kind of event.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="What">What happened.</param>
/// <param name="Because">Why.</param>
internal sealed record JournalEvent(
    long Run, TimeSpan At, DateTimeOffset Wall, string Kind, string Subject, string What, string Because)
{
    /// <summary>As the log words it.</summary>
    public string Words => $"{Kind} {Subject}: {What}, because {Because}";
}
