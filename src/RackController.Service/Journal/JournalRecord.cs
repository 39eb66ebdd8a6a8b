using Microsoft.Data.Sqlite;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// Reads the record of a journal, for replays: read-only, a little at a time, so that a service that writes it meanwhile is not held
/// up. What a damaged file still gives is given; where it ends, <see cref="Damage"/> says why.
/// </summary>
public sealed class JournalRecord : IDisposable
{
    /// <summary>So many pages are read at once; in between the writer may tidy its file.</summary>
    private const int PagesAtOnce = 64;

    private readonly SqliteConnection connection;

    private JournalRecord(SqliteConnection connection) => this.connection = connection;

    /// <summary>Why the file cannot be read any further; null while nothing is wrong.</summary>
    public string? Damage { get; private set; }

    /// <summary>Opens a journal.</summary>
    /// <param name="path">Its file.</param>
    /// <exception cref="CouldNotRunException">It cannot be read, is no journal, or has no record.</exception>
    public static JournalRecord Open(string path)
    {
        if (!File.Exists(path))
        {
            throw new CouldNotRunException(Directory.Exists(path)
                ? $"{path}: this is a folder: name the journal in it, journal.db"
                : $"{path}: there is no such file: name a journal, such as journal.db in the state folder");
        }

        try
        {
            var connection = JournalSalvage.Open(path);
            try
            {
                if (WhatIsMissing(connection) is { } missing)
                {
                    throw new CouldNotRunException($"{path}: {missing}");
                }

                return new JournalRecord(connection);
            }
            catch
            {
                connection.Dispose();
                throw;
            }
        }
        catch (SqliteException e)
        {
            throw new CouldNotRunException($"{path}: this is no journal that can be read ({Reason(e)}): try a copy of it from before", e);
        }
    }

    /// <summary>The runs that are on record, oldest first.</summary>
    public IReadOnlyList<RecordedRun> Runs()
    {
        // Row by row, so that a damaged file gives what lies before the damage.
        var runs = new List<(long Number, long First, long Last, long Bytes)>();
        var rows = Rows(
            "SELECT id, run, length(page) FROM recording ORDER BY id", row => (row.GetInt64(0), row.GetInt64(1), row.GetInt64(2)));
        foreach (var (id, number, bytes) in rows)
        {
            if (runs.Count > 0 && runs[^1].Number == number)
            {
                runs[^1] = runs[^1] with { Last = id, Bytes = runs[^1].Bytes + bytes };
            }
            else
            {
                runs.Add((number, id, id, bytes));
            }
        }

        return
            [.. runs.Select(run => new RecordedRun(run.Number, FactsOf(run.Number), run.Bytes, Pages(run.Number, run.First, run.Last)))];
    }

    /// <summary>Why something happened, in the words of then.</summary>
    /// <param name="at">When.</param>
    /// <param name="subject">To what.</param>
    /// <returns>Null when the journal does not tell.</returns>
    public string? Because(Moment at, string subject) =>
        Rows(
            "SELECT because FROM events WHERE monotonic = $1 AND wall = $2 AND subject = $3 ORDER BY id DESC LIMIT 1",
            row => row.GetString(0),
            at.Monotonic.Nanoseconds, at.Wall.ToUnixTimeTicks(), subject)
        .FirstOrDefault();

    /// <summary>Lets go of the file.</summary>
    public void Dispose() => connection.Dispose();

    private static string? WhatIsMissing(SqliteConnection connection)
    {
        if (JournalSchema.VersionOf(connection) is not { } version)
        {
            return "this is no journal: name one, such as journal.db in the state folder";
        }

        return version > JournalSchema.Version ? "a newer version of this program wrote this journal: replay it with that one"
            : version < JournalSchema.WithRecording
                ? "this journal is from before there were records: run the racks with this version first"
            : null;
    }

    private static string Reason(SqliteException e) => e.Message.ReplaceLineEndings(" ");

    private RunFacts? FactsOf(long run) =>
        Rows(
            """
            SELECT name, text, program, zones, racks, loads, sensors
            FROM recorded_runs JOIN rack_files ON rack_files.id = rack_file WHERE run = $1
            """,
            row => new RunFacts(
                row.GetString(0), row.GetString(1), row.GetString(2), row.GetString(3),
                new PartNames(
                    [.. row.GetString(4).Split(RecordingTables.Separator)],
                    [.. row.GetString(5).Split(RecordingTables.Separator)],
                    [.. row.GetString(6).Split(RecordingTables.Separator)])),
            run)
        .FirstOrDefault();

    private IEnumerable<byte[]> Pages(long run, long first, long last)
    {
        var next = first;
        while (next <= last)
        {
            var pages = new List<byte[]>();
            var before = next;
            foreach (var (id, page) in Rows(
                "SELECT id, page FROM recording WHERE id BETWEEN $1 AND $2 AND run = $3 ORDER BY id LIMIT $4",
                row => (row.GetInt64(0), row.GetFieldValue<byte[]>(1)),
                next, last, run, (long)PagesAtOnce))
            {
                pages.Add(page);
                next = id + 1;
            }

            foreach (var page in pages)
            {
                yield return page;
            }

            if (next <= before)
            {
                yield break;
            }
        }
    }

    /// <summary>The rows of a query, as far as they can be read and make sense.</summary>
    private IEnumerable<T> Rows<T>(string sql, Func<SqliteDataReader, T> read, params object[] values)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        for (var i = 0; i < values.Length; i++)
        {
            command.Parameters.AddWithValue($"${i + 1}", values[i]);
        }

        using var rows = Try(command.ExecuteReader);
        while (rows is not null && Try(() => rows.Read() ? new Row<T>(read(rows)) : null) is { } row)
        {
            yield return row.Value;
        }
    }

    /// <summary>What is asked for; null where the damage does not give it.</summary>
    private T? Try<T>(Func<T?> ask)
        where T : class
    {
        try
        {
            return ask();
        }
        catch (SqliteException e)
        {
            Damage = Reason(e);
        }
        catch (Exception e) when (JournalMemory.IsNonsense(e))
        {
            Damage = $"it holds what makes no sense: {e.Message.ReplaceLineEndings(" ")}";
        }

        return null;
    }

    private sealed record Row<T>(T Value);
}
