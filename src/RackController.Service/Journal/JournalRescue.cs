using Microsoft.Data.Sqlite;

namespace RackController.Service;

/// <summary>
/// Begins a journal with what a broken one still gives. It is made whole under a name of its own before the broken one is put aside, so
/// that a kill between any two steps leaves the one or the other.
/// </summary>
internal static class JournalRescue
{
    private const string Suffix = ".rescued";

    /// <summary>Copies what can be read.</summary>
    /// <param name="path">The broken journal.</param>
    /// <returns>How many events that were; null when nothing can be read at all.</returns>
    /// <exception cref="SqliteException">The disk does not take it, or somebody holds the broken journal.</exception>
    public static long? Prepare(string path)
    {
        File.Delete(path + Suffix);
        using var broken = JournalSalvage.Open(path);
        var events = 0L;
        var memory = JournalSalvage.MemoryIn(broken);
        JournalFile.Create(path + Suffix, rescued =>
        {
            var run = JournalSalvage.LastRunIn(broken);
            using (var add = new Statement(
                rescued,
                "INSERT INTO events VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)",
                "$1", "$2", "$3", "$4", "$5", "$6", "$7", "$8", "$9"))
            {
                foreach (var happened in JournalSalvage.EventsIn(broken))
                {
                    add.Run(happened);
                    run = Math.Max(run, (long)happened[1]);
                    events++;
                }
            }

            DayRows.Put(rescued, [.. JournalSalvage.DaysIn(broken)]);
            using var putRun = new Statement(rescued, "UPDATE meta SET value = $run WHERE key = 'run'", "$run");
            putRun.Run(run);
            if (memory is not null)
            {
                using var putTaken = new Statement(rescued, "INSERT INTO memory_taken VALUES (1, $at, $trusted)", "$at", "$trusted");
                putTaken.Run(memory.SavedAt.ToUnixTimeTicks(), memory.WallTrusted);
                using var put = new Statement(rescued, "INSERT INTO memory VALUES ($key, $value)", "$key", "$value");
                foreach (var (key, value) in memory.Items)
                {
                    put.Run(key, value);
                }
            }
        });
        if (events > 0 || memory is not null)
        {
            return events;
        }

        File.Delete(path + Suffix);
        return null;
    }

    /// <summary>Gives what was rescued the journal's name, if that is free.</summary>
    /// <param name="path">The journal.</param>
    public static void Finish(string path)
    {
        if (!File.Exists(path) && File.Exists(path + Suffix))
        {
            File.Move(path + Suffix, path);
        }
    }
}
