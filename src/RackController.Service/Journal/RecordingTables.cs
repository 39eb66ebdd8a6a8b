using Microsoft.Data.Sqlite;
using RackController.Control;

namespace RackController.Service;

/// <summary>The part of a journal that a replay reads. Written within the transactions of <see cref="JournalFile"/>.</summary>
internal sealed class RecordingTables : IDisposable
{
    /// <summary>Stands between names: the unit separator of ASCII, which is in none.</summary>
    public const char Separator = '\u001f';

    private readonly Statement addFile;
    private readonly Statement putRun;
    private readonly Statement addPage;

    public RecordingTables(SqliteConnection connection)
    {
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

    private static string Joined(IEnumerable<string> names) => string.Join(Separator, names);

    public void Dispose()
    {
        addFile.Dispose();
        putRun.Dispose();
        addPage.Dispose();
    }
}
