using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;

namespace RackController.Service;

/// <summary>
/// The journal's database: SQLite with a write-ahead log, so that it is whole after a power cut. Events and changes of
/// interlock memory are committed with <c>synchronous=FULL</c> and last; samples and signs of life with <c>NORMAL</c>, which
/// may lose the last of them but never corrupts. Used by one thread at a time.
/// </summary>
internal sealed class JournalFile : IDisposable
{
    private const string Full = "FULL";
    private const string Normal = "NORMAL";

    private readonly SqliteConnection connection;
    private readonly RecordingTables recording;
    private readonly Statement begin;
    private readonly Statement commit;
    private readonly Statement rollBack;
    private readonly Statement addEvent;
    private readonly Statement putMemory;
    private readonly Statement forgetMemory;
    private readonly Statement putMemoryTaken;
    private readonly Statement addSensor;
    private readonly Statement addSample;
    private readonly Statement forgetSamples;
    private ImmutableSortedDictionary<string, long> onDisk;

    private JournalFile(SqliteConnection connection, long run)
    {
        this.connection = connection;
        Run = run;
        recording = new(connection);
        begin = new(connection, "BEGIN IMMEDIATE");
        commit = new(connection, "COMMIT");
        rollBack = new(connection, "ROLLBACK");
        addEvent = new(
            connection,
            """
            INSERT INTO events (run, monotonic, wall, wall_trusted, kind, subject, what, because)
            VALUES ($run, $monotonic, $wall, $trusted, $kind, $subject, $what, $because)
            """,
            "$run", "$monotonic", "$wall", "$trusted", "$kind", "$subject", "$what", "$because");
        putMemory = new(connection, "INSERT OR REPLACE INTO memory VALUES ($key, $value)", "$key", "$value");
        forgetMemory = new(connection, "DELETE FROM memory WHERE key = $key", "$key");
        putMemoryTaken = new(connection, "INSERT OR REPLACE INTO memory_taken VALUES (1, $at, $trusted)", "$at", "$trusted");
        addSensor = new(connection, "INSERT OR IGNORE INTO sensors (name) VALUES ($name)", "$name");
        addSample = new(
            connection,
            "INSERT INTO samples SELECT $wall, id, $value FROM sensors WHERE name = $name", "$wall", "$value", "$name");
        forgetSamples = new(connection, "DELETE FROM samples WHERE wall < $before", "$before");
        onDisk = ReadMemory()?.Items ?? ImmutableSortedDictionary<string, long>.Empty;
    }

    /// <summary>The number of this run of the controller, from 1 in a new journal.</summary>
    public long Run { get; }

    /// <summary>Opens a journal, beginning a new one where there is none.</summary>
    /// <param name="path">Its file.</param>
    /// <exception cref="SqliteException">It cannot be opened or is no journal.</exception>
    public static JournalFile Open(string path)
    {
        if (!File.Exists(path))
        {
            Create(path, null);
        }

        var connection = Connect(path, SqliteOpenMode.ReadWrite);
        try
        {
            return new JournalFile(connection, JournalSchema.BeginRun(connection));
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>Makes a journal under another name and gives it its own once it is whole, so that a file without tables is always one
    /// that lost them. The folder is synchronised by SQLite, with the first commit to the log that it makes beside the file.</summary>
    /// <param name="path">Its file, which is not there yet.</param>
    /// <param name="fill">What it begins with; null for nothing.</param>
    public static void Create(string path, Action<SqliteConnection>? fill)
    {
        var draft = path + ".new";
        foreach (var leftover in (string[])[draft, draft + "-wal", draft + "-shm"])
        {
            File.Delete(leftover);
        }

        using (var connection = Connect(draft, SqliteOpenMode.ReadWriteCreate))
        {
            JournalSchema.Create(connection, fill);
        }

        File.Move(draft, path);
    }

    /// <summary>Opens a connection that lets go of its file when it is disposed of.</summary>
    /// <param name="path">The file.</param>
    /// <param name="mode">For reading, or for more.</param>
    public static SqliteConnection Connect(string path, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = mode,
            Pooling = false,
            DefaultTimeout = 1,
        }.ToString());
        connection.Open();

        // In pages, of which there are four to one of the library's usual: what is written again and again goes to the file once in 4 MB.
        using var rarely = connection.CreateCommand();
        rarely.CommandText = "PRAGMA wal_autocheckpoint = 4000";
        rarely.ExecuteNonQuery();
        return connection;
    }

    /// <summary>What was remembered last; null when nothing ever was.</summary>
    public ControlMemory? ReadMemory() => JournalMemory.In(connection);

    /// <summary>The later of the last trusted wall times of events and memory; null when none was trusted.</summary>
    public Instant? LastTrustedTime() => JournalMemory.LastTrustedTimeIn(connection);

    /// <summary>Commits events, what must be remembered after them, and the record that leads up to them. When this returns they
    /// outlast a power cut.</summary>
    /// <param name="entries">What was handed over, in order.</param>
    /// <param name="pages">The record since it was written last.</param>
    /// <param name="recordedAs">The run that the record belongs to.</param>
    public void WriteLasting(IReadOnlyList<JournalEntry> entries, IReadOnlyList<PageBytes> pages, long recordedAs)
    {
        var memory = entries.LastOrDefault(entry => entry.Memory is not null)?.Memory;
        InTransaction(Full, () =>
        {
            foreach (var happened in entries.SelectMany(entry => entry.Events))
            {
                addEvent.Run(
                    Run, happened.At.Monotonic.Nanoseconds, happened.At.Wall.ToUnixTimeTicks(), happened.At.WallTrusted,
                    happened.Kind.ToString(), happened.Subject, happened.What, happened.Because);
            }

            PutMemory(memory);
            recording.Add(recordedAs, pages);
        });
        onDisk = memory?.Items ?? onDisk;
    }

    /// <summary>Puts on record what a run is driven by.</summary>
    /// <param name="recordedAs">The run.</param>
    /// <param name="facts">What it is driven by.</param>
    public void WriteRun(long recordedAs, RunFacts facts) => InTransaction(Normal, () => recording.Put(recordedAs, facts));

    /// <summary>Commits what need not last at once: it outlasts the process, but perhaps not a power cut.</summary>
    /// <param name="memory">A sign of life with what is remembered; null without one.</param>
    /// <param name="samples">Samples.</param>
    /// <param name="pages">The record since it was written last.</param>
    /// <param name="recordedAs">The run that the record belongs to.</param>
    public void WriteQuietly(
        ControlMemory? memory, IReadOnlyList<Sample> samples, IReadOnlyList<PageBytes> pages, long recordedAs)
    {
        InTransaction(Normal, () =>
        {
            PutMemory(memory);
            foreach (var sample in samples)
            {
                addSensor.Run(sample.Sensor);
                addSample.Run(sample.Wall.ToUnixTimeTicks(), sample.Value, sample.Sensor);
            }

            recording.Add(recordedAs, pages);
        });
        onDisk = memory?.Items ?? onDisk;
    }

    /// <summary>Puts down sums of days, for good.</summary>
    /// <param name="sums">The sums.</param>
    public void WriteDays(IReadOnlyList<DaySum> sums) => InTransaction(Normal, () => DayRows.Put(connection, sums));

    /// <summary>Lets go of samples older than a time.</summary>
    /// <param name="before">The time.</param>
    public void ForgetSamples(Instant before) => InTransaction(Normal, () => forgetSamples.Run(before.ToUnixTimeTicks()));

    /// <summary>Forgets some of the oldest of the record, if it is older than it is kept or the journal is larger than it may be. A
    /// little at a time, because events wait meanwhile; what is left free is used again.</summary>
    /// <param name="before">Up to when the record may go; null while nobody knows the time.</param>
    /// <param name="mostBytes">How large the journal may be.</param>
    public void ForgetRecording(Instant? before, long mostBytes)
    {
        if (recording.CountToForget(before, mostBytes) is > 0 and var count)
        {
            InTransaction(Normal, () => recording.Forget(count));
        }
    }

    /// <summary>How durable the last commit was, in the words of SQLite: <c>FULL</c> or <c>NORMAL</c>.</summary>
    public string Synchronous()
    {
        using var command = Query("PRAGMA synchronous");
        return command.ExecuteScalar() is 2L ? Full : Normal;
    }

    public void Dispose()
    {
        Statement[] all =
        [
            begin, commit, rollBack, addEvent, putMemory, forgetMemory, putMemoryTaken, addSensor, addSample, forgetSamples,
        ];
        foreach (var statement in all)
        {
            statement.Dispose();
        }

        recording.Dispose();
        connection.Dispose();
    }

    /// <summary>Writes only what differs from the disk: most of what is remembered rarely changes.</summary>
    private void PutMemory(ControlMemory? memory)
    {
        if (memory is null)
        {
            return;
        }

        putMemoryTaken.Run(memory.SavedAt.ToUnixTimeTicks(), memory.WallTrusted);
        foreach (var (key, value) in memory.Items)
        {
            if (!onDisk.TryGetValue(key, out var known) || known != value)
            {
                putMemory.Run(key, value);
            }
        }

        foreach (var key in onDisk.Keys.Where(key => !memory.Items.ContainsKey(key)))
        {
            forgetMemory.Run(key);
        }
    }

    private void InTransaction(string durability, Action write)
    {
        SetSynchronous(durability);
        begin.Run();
        try
        {
            write();
            commit.Run();
        }
        catch (SqliteException)
        {
            RollBack();
            throw;
        }
    }

    /// <summary>SQLite carries this out while it compiles the statement, so it is compiled anew each time.</summary>
    private void SetSynchronous(string durability)
    {
        if (durability != Synchronous())
        {
            using var pragma = Query($"PRAGMA synchronous = {durability}");
            pragma.ExecuteNonQuery();
        }
    }

    /// <summary>SQLite has rolled back by itself after some errors, and says so by an error here; the first error counts.</summary>
    private void RollBack()
    {
        if (SQLitePCL.raw.sqlite3_get_autocommit(connection.Handle) == 0)
        {
            rollBack.Run();
        }
    }

    private SqliteCommand Query(string sql)
    {
        var command = connection.CreateCommand();
        command.CommandText = sql;
        return command;
    }
}
