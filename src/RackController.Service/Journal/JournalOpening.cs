using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;

namespace RackController.Service;

/// <summary>What came of opening the journal.</summary>
/// <param name="File">The open journal; null when none can be opened now.</param>
/// <param name="Memory">What an earlier run remembered; null for a rack that was never driven. Empty, but not null, when an
/// earlier run's memory cannot be known, so that its worst is assumed.</param>
/// <param name="LastTrustedTime">The last trusted wall time in it; null when there is none.</param>
/// <param name="SetAside">What was wrong with the file that was there, and its new name; null when nothing was.</param>
/// <param name="Unusable">Why no journal can be opened; null when one is.</param>
internal sealed record JournalOpening(
    JournalFile? File, ControlMemory? Memory, Instant? LastTrustedTime, string? SetAside, string? Unusable)
{
    private const string LogSuffix = "-wal";
    private const string Corrupt = "corrupt";

    private static readonly ControlMemory NothingKnown =
        new(Instant.FromUnixTimeTicks(0), false, ImmutableSortedDictionary<string, long>.Empty);

    /// <summary>Opens the journal of a state folder. A file that is corrupt, or that a newer program wrote, is
    /// renamed as it is and a new one begun: a broken record is no reason to leave a rack undriven. What can be read of a corrupt one
    /// goes on in the new one; what a newer program remembered is taken up too, so that going back a version lets no latch go.</summary>
    /// <param name="path">The journal's file.</param>
    /// <param name="now">The time, for the new name of a file that is put aside.</param>
    public static JournalOpening Open(string path, Instant now)
    {
        try
        {
            var wrong = System.IO.File.Exists(path) ? WhatIsWrongWith(path)
                : System.IO.File.Exists(path + LogSuffix) ? new Fault("gone", "is gone, and left its write-ahead log", NothingKnown)
                : null;
            return OpenForWriting(wrong, path, now);
        }
        catch (Exception e) when (IsDiskTrouble(e))
        {
            // A disk that takes nothing any more often still gives: latches must not go with it.
            var memory = JournalGlance.At(path) ?? NothingKnown;
            return new JournalOpening(null, memory, memory.WallTrusted ? memory.SavedAt : null, null, $"{path}: {e.Message}");
        }
    }

    /// <summary>Opens the journal once more, after this opening of it, or the file since, was of no use.</summary>
    /// <param name="path">The journal's file; its folder is made if it has gone.</param>
    /// <param name="now">The time, for the new name of a file that is put aside.</param>
    public JournalOpening Again(string path, Instant now)
    {
        if (Path.GetDirectoryName(path) is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
        }

        // What an earlier run remembered could not be read, and must not be written over by what this one does.
        return IsUnread && System.IO.File.Exists(path)
            ? OpenWithout(new Fault("unread", "could not be read when the controller started", NothingKnown), path, now)
            : Open(path, now);
    }

    /// <summary>Whether what an earlier run remembered may lie where it could not be read.</summary>
    public bool IsUnread => File is null && ReferenceEquals(Memory, NothingKnown);

    /// <summary>SQLite looks at some of what a table demands of its rows only when something is to be written.</summary>
    private static JournalOpening OpenForWriting(Fault? wrong, string path, Instant now)
    {
        try
        {
            return OpenWithout(wrong, path, now);
        }
        catch (SqliteException e) when (wrong is null && IsCorruption(e))
        {
            return OpenWithout(CorruptAs(e), path, now);
        }
    }

    private static JournalOpening OpenWithout(Fault? wrong, string path, Instant now)
    {
        var rescued = wrong?.Kind == Corrupt ? JournalRescue.Prepare(path) : null;
        var setAside = wrong is null ? null : SetAsideFile(path, wrong, now) + " and a new one begun" + (
            rescued is null ? "" : $" with what could be read of it ({rescued} events)");
        JournalRescue.Finish(path);
        var file = JournalFile.Open(path);
        return new JournalOpening(file, file.ReadMemory() ?? wrong?.Memory, file.LastTrustedTime(), setAside, null);
    }

    /// <summary>Whether an error is one of the disk or the database rather than of the program.</summary>
    /// <param name="e">The error.</param>
    public static bool IsDiskTrouble(Exception e) => e is SqliteException or IOException or UnauthorizedAccessException;

    /// <summary>Looks at a journal without changing it.</summary>
    private static Fault? WhatIsWrongWith(string path)
    {
        try
        {
            using var connection = JournalFile.Connect(path, SqliteOpenMode.ReadOnly);
            if (JournalSchema.QuickCheck(connection) is { } damage)
            {
                return new Fault(Corrupt, $"is corrupt ({damage.ReplaceLineEndings(" ")})", NothingKnown);
            }

            if (JournalSchema.VersionOf(connection) is not { } version)
            {
                return new Fault("empty", "lost all that was in it", NothingKnown);
            }

            if (version > JournalSchema.Version)
            {
                return new Fault(
                    "newer", $"is of a newer version (its schema is {version}, this program knows {JournalSchema.Version})",
                    JournalGlance.At(path) ?? NothingKnown);
            }

            JournalSchema.LookForColumns(connection, version);
            _ = JournalMemory.In(connection);
            _ = JournalMemory.LastTrustedTimeIn(connection);
            return null;
        }
        catch (Exception e) when (JournalMemory.IsNonsense(e))
        {
            return new Fault(Corrupt, $"is corrupt (it holds what makes no sense: {e.Message.ReplaceLineEndings(" ")})", NothingKnown);
        }
        catch (SqliteException e) when (IsCorruption(e))
        {
            return CorruptAs(e);
        }
    }

    private static bool IsCorruption(SqliteException e) =>
        e.SqliteErrorCode is SQLitePCL.raw.SQLITE_CORRUPT or SQLitePCL.raw.SQLITE_NOTADB or SQLitePCL.raw.SQLITE_ERROR;

    private static Fault CorruptAs(SqliteException e) => new(Corrupt, $"is corrupt ({e.Message})", NothingKnown);

    /// <summary>Renames the file, and the write-ahead log that belongs to it.</summary>
    private static string SetAsideFile(string path, Fault fault, Instant now)
    {
        var stamp = now.ToString("uuuuMMdd'T'HHmmss'Z'", System.Globalization.CultureInfo.InvariantCulture);
        var aside = Path.Combine(Path.GetDirectoryName(path) ?? ".", $"journal-{stamp}-{fault.Kind}.db");
        foreach (var suffix in (string[])["", LogSuffix, "-shm"])
        {
            if (System.IO.File.Exists(path + suffix))
            {
                System.IO.File.Move(path + suffix, aside + suffix, overwrite: false);
            }
        }

        return $"the journal {fault.What}; it was kept as {Path.GetFileName(aside)}";
    }

    private sealed record Fault(string Kind, string What, ControlMemory Memory);
}
