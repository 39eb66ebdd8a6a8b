using System.Collections.Immutable;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using RackController.Growing;

namespace RackController.Service;

/// <summary>
/// The growing book on disk: SQLite with a write-ahead log, one row for each entry, its text JSON. Rows are only added; the database
/// itself refuses to change or delete one. What was put down outlasts a power cut. From any thread and any process.
/// </summary>
/// <param name="path">Its file; it is made with the first entry.</param>
public sealed class BookFile(string path)
{
    private const string Tables = """
        CREATE TABLE IF NOT EXISTS entries (number INTEGER PRIMARY KEY AUTOINCREMENT, at INTEGER NOT NULL, entry TEXT NOT NULL);
        CREATE TRIGGER IF NOT EXISTS entries_stay BEFORE DELETE ON entries BEGIN SELECT RAISE(ABORT, 'entries stay'); END;
        CREATE TRIGGER IF NOT EXISTS entries_stay_as_they_are BEFORE UPDATE ON entries
            BEGIN SELECT RAISE(ABORT, 'entries stay as they are'); END;
        """;

    /// <summary>Everything that was put down, in order.</summary>
    /// <exception cref="IOException">The file is there and cannot be read, or is no growing book.</exception>
    public BookReading Read() => File.Exists(path) ? Use(SqliteOpenMode.ReadOnly, ReadAll) : BookReading.Empty;

    /// <summary>Puts an entry down. When this returns it lasts.</summary>
    /// <param name="entry">The entry.</param>
    /// <returns>The entry with its number.</returns>
    /// <exception cref="IOException">It cannot be written; nothing was changed.</exception>
    public WrittenEntry Write(BookEntry entry) => Write([entry])[0];

    /// <summary>Puts entries down, all of them or none. When this returns they last.</summary>
    /// <param name="entries">The entries.</param>
    /// <returns>The entries with their numbers.</returns>
    /// <exception cref="IOException">They cannot be written; nothing was changed.</exception>
    public ImmutableArray<WrittenEntry> Write(ImmutableArray<BookEntry> entries) => Use(SqliteOpenMode.ReadWriteCreate, connection =>
    {
        Run(connection, "PRAGMA journal_mode = WAL");
        Run(connection, "PRAGMA synchronous = FULL");
        using var transaction = connection.BeginTransaction();
        Run(connection, Tables);
        var written = entries.Select(entry => new WrittenEntry(Add(connection, entry), entry)).ToImmutableArray();
        transaction.Commit();
        return written;
    });

    private static BookReading ReadAll(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT number, entry FROM entries ORDER BY number";
        using var rows = command.ExecuteReader();
        var entries = ImmutableArray.CreateBuilder<WrittenEntry>();
        var unreadable = ImmutableArray.CreateBuilder<long>();
        while (rows.Read())
        {
            if (Parsed(rows.GetString(1)) is { } entry)
            {
                entries.Add(new WrittenEntry(rows.GetInt64(0), entry));
            }
            else
            {
                unreadable.Add(rows.GetInt64(0));
            }
        }

        return new BookReading(entries.DrainToImmutable(), unreadable.DrainToImmutable());
    }

    private static BookEntry? Parsed(string text)
    {
        try
        {
            return JsonSerializer.Deserialize(text, BookJson.Default.BookEntry);
        }
        catch (Exception e) when (e is JsonException or NotSupportedException)
        {
            // Of a later program, or damaged: the others are still good, and its number is told.
            return null;
        }
    }

    private static long Add(SqliteConnection connection, BookEntry entry)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "INSERT INTO entries (at, entry) VALUES ($at, $entry) RETURNING number";
        command.Parameters.AddWithValue("$at", entry.At.ToUnixTimeSeconds());
        command.Parameters.AddWithValue("$entry", JsonSerializer.Serialize(entry, BookJson.Default.BookEntry));
        return (long)command.ExecuteScalar()!;
    }

    private static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private T Use<T>(SqliteOpenMode mode, Func<SqliteConnection, T> use)
    {
        try
        {
            using var connection = JournalFile.Connect(path, mode);
            return use(connection);
        }
        catch (Exception e) when (e is SqliteException or InvalidCastException)
        {
            throw new IOException($"{path}: the growing book cannot be used: {e.Message.TrimEnd('.')}", e);
        }
    }
}

/// <summary>What the growing book says.</summary>
/// <param name="Entries">Its entries, in order.</param>
/// <param name="Unreadable">The numbers of those that this program cannot read.</param>
public sealed record BookReading(ImmutableArray<WrittenEntry> Entries, ImmutableArray<long> Unreadable)
{
    /// <summary>A book in which nothing stands.</summary>
    public static readonly BookReading Empty = new([], []);
}
