using Microsoft.Data.Sqlite;

namespace RackController.Service;

/// <summary>The tables of a journal. Wall times are in units of 100 ns since 1970-01-01T00:00Z, as .NET counts them;
/// monotonic times are in nanoseconds and comparable within one <c>run</c> only.</summary>
internal static class JournalSchema
{
    /// <summary>Counts up with every change that an older program could not read.</summary>
    public const long Version = WithRecording;

    /// <summary>The version that brought the record for replays.</summary>
    public const long WithRecording = 2;

    private const string Tables = """
        CREATE TABLE meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
        CREATE TABLE events (
            id INTEGER PRIMARY KEY, run INTEGER NOT NULL, monotonic INTEGER NOT NULL, wall INTEGER NOT NULL,
            wall_trusted INTEGER NOT NULL, kind TEXT NOT NULL, subject TEXT NOT NULL, what TEXT NOT NULL, because TEXT NOT NULL);
        CREATE TABLE memory (key TEXT PRIMARY KEY, value INTEGER NOT NULL) WITHOUT ROWID;
        CREATE TABLE memory_taken (
            one INTEGER PRIMARY KEY CHECK (one = 1), saved_at INTEGER NOT NULL, wall_trusted INTEGER NOT NULL);
        CREATE TABLE sensors (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE);
        CREATE TABLE samples (wall INTEGER NOT NULL, sensor INTEGER NOT NULL REFERENCES sensors (id), value REAL);
        """;

    /// <summary>What came with version 2: the record for replays. Its pages are <see cref="Control.RecordedPage"/>s.</summary>
    private const string RecordingTables = """
        CREATE TABLE rack_files (id INTEGER PRIMARY KEY, name TEXT NOT NULL, text TEXT NOT NULL);
        CREATE TABLE recorded_runs (
            run INTEGER PRIMARY KEY, rack_file INTEGER NOT NULL REFERENCES rack_files (id), program TEXT NOT NULL, zones TEXT NOT NULL,
            racks TEXT NOT NULL, loads TEXT NOT NULL, sensors TEXT NOT NULL);
        CREATE TABLE recording (id INTEGER PRIMARY KEY, run INTEGER NOT NULL, wall INTEGER NOT NULL, page BLOB NOT NULL);
        """;

    /// <summary>A sum of each day, kept for good. They came without a new version, since a program that does not know them misses
    /// nothing.</summary>
    private const string DayTables = """
        CREATE TABLE IF NOT EXISTS day_series (
            id INTEGER PRIMARY KEY, subject TEXT NOT NULL, figure TEXT NOT NULL, UNIQUE (subject, figure));
        CREATE TABLE IF NOT EXISTS days (
            day INTEGER NOT NULL, series INTEGER NOT NULL REFERENCES day_series (id), least REAL NOT NULL, mean REAL NOT NULL,
            most REAL NOT NULL, PRIMARY KEY (day, series)) WITHOUT ROWID;
        """;

    /// <summary>Gives a new file the tables of a journal.</summary>
    /// <param name="connection">An open file without tables.</param>
    /// <param name="fill">What is put into them at once; null for nothing.</param>
    public static void Create(SqliteConnection connection, Action<SqliteConnection>? fill)
    {
        // A commit writes whole pages and most change a line or two: small ones spare the card half of it.
        Execute(connection, "PRAGMA page_size = 1024");
        Execute(connection, "PRAGMA journal_mode = WAL");
        Execute(connection, "PRAGMA synchronous = FULL");
        Execute(connection, "BEGIN IMMEDIATE");
        Execute(connection, Tables);
        Execute(connection, "INSERT INTO meta VALUES ('schema_version', '1')");
        Execute(connection, "INSERT INTO meta VALUES ('run', '0')");
        BringUpToDate(connection);
        fill?.Invoke(connection);
        Execute(connection, "COMMIT");
    }

    /// <summary>Makes sure that a journal has its tables, and counts one more run of the controller.</summary>
    /// <param name="connection">An open journal.</param>
    /// <returns>The number of this run.</returns>
    public static long BeginRun(SqliteConnection connection)
    {
        Execute(connection, "PRAGMA synchronous = FULL");
        Execute(connection, "BEGIN IMMEDIATE");
        BringUpToDate(connection);
        Execute(connection, "UPDATE meta SET value = CAST(value AS INTEGER) + 1 WHERE key = 'run'");
        var run = Number(connection, "SELECT CAST(value AS INTEGER) FROM meta WHERE key = 'run'");
        Execute(connection, "COMMIT");
        return run ?? 1;
    }

    /// <summary>Adds to an older journal what came since, within the transaction that is open: nothing of it is lost.</summary>
    private static void BringUpToDate(SqliteConnection connection)
    {
        if (VersionOf(connection) is 1)
        {
            Execute(connection, RecordingTables);
            Execute(connection, "UPDATE meta SET value = '2' WHERE key = 'schema_version'");
        }

        Execute(connection, DayTables);
    }

    /// <summary>The schema version of a journal; null when the file has no tables yet.</summary>
    /// <param name="connection">An open journal, which may be read-only.</param>
    public static long? VersionOf(SqliteConnection connection) =>
        Number(connection, "SELECT count(*) FROM sqlite_schema") == 0
            ? null
            : Number(connection, "SELECT CAST(value AS INTEGER) FROM meta WHERE key = 'schema_version'");

    /// <summary>Asks for everything that a journal of its version has.</summary>
    /// <param name="connection">An open journal, which may be read-only.</param>
    /// <param name="version">The version of its schema.</param>
    /// <exception cref="SqliteException">A table or column is not there.</exception>
    public static void LookForColumns(SqliteConnection connection, long version)
    {
        Execute(connection, "SELECT key, value FROM meta LIMIT 0");
        Execute(connection, "SELECT id, run, monotonic, wall, wall_trusted, kind, subject, what, because FROM events LIMIT 0");
        Execute(connection, "SELECT key, value FROM memory LIMIT 0");
        Execute(connection, "SELECT one, saved_at, wall_trusted FROM memory_taken LIMIT 0");
        Execute(connection, "SELECT id, name FROM sensors LIMIT 0");
        Execute(connection, "SELECT wall, sensor, value FROM samples LIMIT 0");
        if (version >= WithRecording)
        {
            Execute(connection, "SELECT id, name, text FROM rack_files LIMIT 0");
            Execute(connection, "SELECT run, rack_file, program, zones, racks, loads, sensors FROM recorded_runs LIMIT 0");
            Execute(connection, "SELECT id, run, wall, page FROM recording LIMIT 0");
        }
    }

    /// <summary>What SQLite finds wrong with a file; null when nothing is.</summary>
    /// <param name="connection">An open journal, which may be read-only.</param>
    public static string? QuickCheck(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA quick_check(1)";
        var answer = command.ExecuteScalar() as string;
        return answer == "ok" ? null : answer ?? "no answer";
    }

    private static void Execute(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static long? Number(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar() as long?;
    }
}
