using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;

namespace RackController.Service;

/// <summary>The part of a journal that a replay reads. Written within the transactions of <see cref="JournalFile"/>.</summary>
internal sealed class RecordingTables : IDisposable
{
    /// <summary>Stands between names: the unit separator of ASCII, which is in none.</summary>
    public const char Separator = '\u001f';

    /// <summary>So much of the record is forgotten at once: hours of it, in milliseconds.</summary>
    private const int MostAtOnce = 200;

    private readonly SqliteConnection connection;
    private readonly Statement forgetPages;
    private readonly Statement forgetRuns;
    private readonly Statement forgetFiles;
    private readonly Statement addFile;
    private readonly Statement putRun;
    private readonly Statement addPage;

    public RecordingTables(SqliteConnection connection)
    {
        this.connection = connection;
        forgetPages = new(
            connection, "DELETE FROM recording WHERE id IN (SELECT id FROM recording ORDER BY id LIMIT $count)", "$count");
        forgetRuns = new(
            connection,
            """
            DELETE FROM recorded_runs WHERE run < (SELECT run FROM recording ORDER BY id LIMIT 1)
            """);
        forgetFiles = new(connection, "DELETE FROM rack_files WHERE id NOT IN (SELECT rack_file FROM recorded_runs)");
        addFile = new(
            connection,
            """
            INSERT INTO rack_files (name, text) SELECT $name, $text
            WHERE NOT EXISTS (SELECT 1 FROM rack_files WHERE name = $name AND text = $text)
            """,
            "$name", "$text");
        putRun = new(
            connection,
            """
            INSERT OR REPLACE INTO recorded_runs SELECT $run, id, $program, $zones, $racks, $loads, $sensors
            FROM rack_files WHERE name = $name AND text = $text
            """,
            "$run", "$program", "$zones", "$racks", "$loads", "$sensors", "$name", "$text");
        addPage = new(
            connection, "INSERT INTO recording (run, wall, page) VALUES ($run, $wall, $page)", "$run", "$wall", "$page");
    }

    /// <summary>Puts down what a run is driven by; a rack file that is there already is not put down again.</summary>
    public void Put(long run, RunFacts facts)
    {
        addFile.Run(facts.RackFileName, facts.RackFileText);
        putRun.Run(
            run, facts.Program, facts.Zones, Joined(facts.Names.Racks), Joined(facts.Names.Loads), Joined(facts.Names.Sensors),
            facts.RackFileName, facts.RackFileText);
    }

    /// <summary>Adds pages of a run.</summary>
    public void Add(long run, IReadOnlyList<PageBytes> pages)
    {
        foreach (var page in pages)
        {
            addPage.Run(run, page.Begins.Wall.ToUnixTimeTicks(), page.Body);
        }
    }

    /// <summary>How many of the oldest pages may go: those of before a time, or as many as go at once of a journal that is too
    /// large. Only the oldest are looked at, so that a clock that was wrong for a while lets nothing young go.</summary>
    public int CountToForget(Instant? before, long mostBytes)
    {
        var isLarge = UsedBytes() > mostBytes;
        using var oldest = connection.CreateCommand();
        oldest.CommandText = "SELECT wall FROM recording ORDER BY id LIMIT $count";
        oldest.Parameters.AddWithValue("$count", MostAtOnce);
        using var rows = oldest.ExecuteReader();
        var count = 0;
        while (rows.Read() && (isLarge || (before is { } time && rows.GetInt64(0) < time.ToUnixTimeTicks())))
        {
            count++;
        }

        return count;
    }

    /// <summary>Forgets the oldest pages, and what no other page needs.</summary>
    public void Forget(int count)
    {
        forgetPages.Run(count);
        forgetRuns.Run();
        forgetFiles.Run();
    }

    private long UsedBytes()
    {
        using var command = connection.CreateCommand();
        command.CommandText =
            "SELECT (page_count - freelist_count) * page_size FROM pragma_page_count, pragma_freelist_count, pragma_page_size";
        return command.ExecuteScalar() is long bytes ? bytes : 0;
    }

    private static string Joined(IEnumerable<string> names) => string.Join(Separator, names);

    public void Dispose()
    {
        forgetPages.Dispose();
        forgetRuns.Dispose();
        forgetFiles.Dispose();
        addFile.Dispose();
        putRun.Dispose();
        addPage.Dispose();
    }
}
