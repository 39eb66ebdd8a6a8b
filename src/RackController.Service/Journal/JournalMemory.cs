using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;

namespace RackController.Service;

/// <summary>What a journal has to tell to the next run. Where a broken file holds what makes no sense, reading it throws whatever comes
/// of that; <see cref="JournalOpening"/> puts such a file aside.</summary>
internal static class JournalMemory
{
    /// <summary>Whether an error is that of a value that no program wrote: text or nothing for a number, a time before all times.</summary>
    /// <param name="e">The error.</param>
    public static bool IsNonsense(Exception e) =>
        e is ArgumentException or InvalidOperationException or InvalidCastException or FormatException or OverflowException;

    /// <summary>What a journal that is open remembers; null when nothing ever was.</summary>
    /// <param name="connection">An open journal, which may be read-only.</param>
    public static ControlMemory? In(SqliteConnection connection)
    {
        using var taken = connection.CreateCommand();
        taken.CommandText = "SELECT saved_at, wall_trusted FROM memory_taken";
        using var when = taken.ExecuteReader();
        if (!when.Read())
        {
            return null;
        }

        using var items = connection.CreateCommand();
        items.CommandText = "SELECT key, value FROM memory";
        using var rows = items.ExecuteReader();
        var found = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        while (rows.Read())
        {
            found[rows.GetString(0)] = rows.GetInt64(1);
        }

        return new ControlMemory(
            Instant.FromUnixTimeTicks(when.GetInt64(0)), when.GetInt64(1) != 0, found.ToImmutable());
    }

    /// <summary>The later of the last trusted wall times of events and memory; null when none was trusted. Not the latest there
    /// ever was: a clock that was set back was wrong before.</summary>
    /// <param name="connection">An open journal, which may be read-only.</param>
    public static Instant? LastTrustedTimeIn(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = """
            SELECT max(t) FROM (
                SELECT saved_at AS t FROM memory_taken WHERE wall_trusted
                UNION ALL SELECT wall FROM (
                    SELECT id, wall FROM (SELECT id, wall, wall_trusted FROM events ORDER BY id DESC LIMIT 100)
                    WHERE wall_trusted ORDER BY id DESC LIMIT 1))
            """;
        return command.ExecuteScalar() is long ticks ? Instant.FromUnixTimeTicks(ticks) : null;
    }
}
