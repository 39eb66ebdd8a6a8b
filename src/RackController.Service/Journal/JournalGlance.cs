using Microsoft.Data.Sqlite;
using RackController.Control;
using SQLitePCL;

namespace RackController.Service;

/// <summary>Reads what a journal remembers where it cannot be opened for writing: a disk that takes nothing any more, or a folder of
/// somebody else, still gives.</summary>
internal static class JournalGlance
{
    /// <summary>What it remembers; null when that cannot be known.</summary>
    /// <param name="path">Its file.</param>
    public static ControlMemory? At(string path)
    {
        var ways = (Func<SqliteConnection>[])
            [() => JournalSalvage.Open(path), () => OpenWithoutRoom(path), () => OpenWithoutPermission(path)];
        foreach (var open in ways)
        {
            if (TryRead(open, out var memory))
            {
                return memory;
            }
        }

        return null;
    }

    /// <returns>Whether another way would tell no more.</returns>
    private static bool TryRead(Func<SqliteConnection> open, out ControlMemory? memory)
    {
        memory = null;
        try
        {
            using var connection = open();
            memory = JournalSchema.QuickCheck(connection) is null ? JournalMemory.In(connection) : JournalSalvage.MemoryIn(connection);
            return true;
        }
        catch (Exception e) when (e is SqliteException || JournalMemory.IsNonsense(e))
        {
            // Held by somebody, or written by a newer program that remembers in another way: no other way helps. Whoever asks has an
            // alarm that says so.
            return e is not SqliteException { SqliteErrorCode: not (raw.SQLITE_ERROR or raw.SQLITE_BUSY) };
        }
    }

    /// <summary>SQLite keeps its index of the write-ahead log in a file, for which a full disk has no room; in memory while nobody else
    /// may look.</summary>
    private static SqliteConnection OpenWithoutRoom(string path)
    {
        var connection = JournalFile.Connect(path, SqliteOpenMode.ReadWrite);
        using var alone = connection.CreateCommand();
        alone.CommandText = "PRAGMA locking_mode = EXCLUSIVE";
        alone.ExecuteNonQuery();
        return connection;
    }

    /// <summary>Where nothing may be written, a file without a write-ahead log is read as one that nobody changes.</summary>
    /// <param name="path">Its file.</param>
    /// <exception cref="SqliteException">It cannot be opened, or has a write-ahead log.</exception>
    internal static SqliteConnection OpenWithoutPermission(string path)
    {
        if (new FileInfo(path + "-wal") is { Exists: true, Length: > 0 })
        {
            throw new SqliteException("it has a write-ahead log", raw.SQLITE_READONLY);
        }

        return JournalFile.Connect($"{new Uri(path)}?immutable=1", SqliteOpenMode.ReadOnly);
    }
}
