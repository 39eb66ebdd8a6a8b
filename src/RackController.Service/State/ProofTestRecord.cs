using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>What the journal of a state folder knows of proof tests, read without touching it, whether or not the rack runs.</summary>
public static class ProofTestRecord
{
    /// <summary>Where every proof test of a site stands.</summary>
    /// <param name="site">The site.</param>
    /// <param name="folder">Its state folder.</param>
    /// <param name="now">The time by the wall clock, which is taken as right.</param>
    /// <param name="isDriven">Whether there is a journal, and so a rack that was ever driven; without one nothing was tested.</param>
    /// <exception cref="CouldNotRunException">There is a journal and it cannot be read.</exception>
    public static ImmutableArray<ProofTestStatus> Read(Site site, StateFolder folder, Instant now, out bool isDriven)
    {
        ArgumentNullException.ThrowIfNull(folder);
        var memory = File.Exists(folder.Journal) ? Remembered(folder.Journal) : null;
        isDriven = memory is not null;
        var start = new Moment(MonotonicTime.Zero, now, WallTrusted: true);
        var control = new RackControl(site, start, memory);

        // The calendar is read with the first scan; nobody takes its commands.
        control.Scan(
            start with { Monotonic = MonotonicTime.FromMilliseconds(1) }, new Readings(site), ScanConditions.Good, [], new EventTray());
        return control.ProofTests();
    }

    private static ControlMemory? Remembered(string path)
    {
        try
        {
            using var connection = JournalFile.Connect(path, SqliteOpenMode.ReadOnly);
            return JournalMemory.In(connection);
        }
        catch (Exception e) when (e is SqliteException || JournalMemory.IsNonsense(e))
        {
            throw new CouldNotRunException($"{path}: cannot be read ({e.Message.TrimEnd('.')}): see that it is the folder of this rack");
        }
    }
}
