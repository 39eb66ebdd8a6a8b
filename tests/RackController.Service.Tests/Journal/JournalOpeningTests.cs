using Microsoft.Data.Sqlite;

namespace RackController.Service.Tests;

public sealed class JournalOpeningTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private string Path => folder.File("journal.db");

    [Fact]
    public void ARackThatWasNeverDrivenHasNoMemory()
    {
        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var file = opening.File;

        Assert.NotNull(file);
        Assert.Null(opening.Memory);
        Assert.Null(opening.LastTrustedTime);
        Assert.Null(opening.SetAside);
    }

    [Fact]
    public void MemoryComesBackAsItWasWritten()
    {
        var memory = Happenings.Memory(("north/pump/rest", 90_000), ("north/latch", 1));
        using (var file = JournalFile.Open(Path))
        {
            file.WriteLasting(
                [new JournalEntry([Happenings.Event(1)], Happenings.Memory(("north/gone", 5), ("north/latch", 0)))], [], file.Run);
            file.WriteLasting([new JournalEntry([], memory)], [], file.Run);
        }

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var again = opening.File;

        Assert.NotNull(opening.Memory);
        Assert.Equal(memory.Items.AsEnumerable(), opening.Memory.Items);
        Assert.Equal(memory.SavedAt, opening.Memory.SavedAt);
        Assert.True(opening.Memory.WallTrusted);
    }

    [Fact]
    public void TheLastTrustedTimeIsTheLatestOfEventsAndMemory()
    {
        using (var file = JournalFile.Open(Path))
        {
            file.WriteLasting([new JournalEntry([Happenings.Event(30)], Happenings.Memory())], [], file.Run);
            var untrusted = Happenings.Event(900);
            file.WriteLasting([new JournalEntry([untrusted with { At = untrusted.At with { WallTrusted = false } }], null)], [], file.Run);
        }

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var again = opening.File;

        Assert.Equal(Happenings.Event(30).At.Wall, opening.LastTrustedTime);
    }

    [Fact]
    public void ATimeThatTheClockWasSetBackFromIsNotTheLastTrustedTime()
    {
        using (var file = JournalFile.Open(Path))
        {
            file.WriteLasting([new JournalEntry([Happenings.Event(86_400), Happenings.Event(30)], Happenings.Memory())], [], file.Run);
        }

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var again = opening.File;

        Assert.Equal(Happenings.Event(30).At.Wall, opening.LastTrustedTime);
    }

    [Fact]
    public void ACorruptJournalIsPutAsideAndANewOneBegun()
    {
        using (var file = JournalFile.Open(Path))
        {
            file.WriteLasting(
                [.. Enumerable.Range(1, 500).Select(number => new JournalEntry([Happenings.Event(number)], null))], [], file.Run);
        }

        var bytes = File.ReadAllBytes(Path);
        bytes.AsSpan(4096, 8192).Fill(0x5A);
        File.WriteAllBytes(Path, bytes);

        AssertPutAside("corrupt", bytes);
    }

    [Fact]
    public void AFileThatIsNoDatabaseIsPutAside()
    {
        var bytes = "This was meant to be a shopping list.\n"u8.ToArray();
        File.WriteAllBytes(Path, bytes);

        AssertPutAside("corrupt", bytes);
    }

    [Fact]
    public void AJournalThatCannotBePutAsideLeavesTheControllerWithoutOne()
    {
        File.WriteAllText(Path, "scribble");
        File.WriteAllText(folder.File("journal-20260601T120000Z-corrupt.db"), "a name that is taken");

        var opening = JournalOpening.Open(Path, Happenings.Noon);

        Assert.Null(opening.File);
        Assert.NotNull(opening.Unusable);
        Assert.Equal("scribble", File.ReadAllText(Path));
    }

    [Fact]
    public void AJournalThatLostAllThatWasInItIsPutAside()
    {
        using (JournalFile.Open(Path))
        {
        }

        File.WriteAllBytes(Path, []);

        AssertPutAside("empty", []);
    }

    /// <summary>SQLite would play a log into whatever file it finds beside it.</summary>
    [Fact]
    public void ALogWhoseJournalIsGoneIsPutAside()
    {
        File.WriteAllBytes(Path + "-wal", [1, 2, 3]);

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var file = opening.File;

        Assert.Equal([1, 2, 3], File.ReadAllBytes(folder.File("journal-20260601T120000Z-gone.db-wal")));
        Assert.Contains("is gone", opening.SetAside, StringComparison.Ordinal);
        Assert.Empty(opening.Memory!.Items);
    }

    [Fact]
    public void AFirstStartThatWasCutOffBeforeTheJournalWasWholeIsOneThatNeverWas()
    {
        File.WriteAllText(Path + ".new", "half of it");

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var file = opening.File;

        Assert.NotNull(file);
        Assert.Null(opening.Memory);
        Assert.Null(opening.SetAside);
        Assert.False(File.Exists(Path + ".new"));
    }

    [Fact]
    public void AJournalOfANewerVersionIsKeptUntouched()
    {
        using (JournalFile.Open(Path))
        {
        }

        Change("UPDATE meta SET value = '999' WHERE key = 'schema_version'");

        AssertPutAside("newer", File.ReadAllBytes(Path));
    }

    [Fact]
    public void WhatANewerVersionRememberedIsTakenUp()
    {
        using (var file = JournalFile.Open(Path))
        {
            file.WriteLasting([new JournalEntry([Happenings.Event(1)], Happenings.Memory(("north/high-water/latched", 1)))], [], file.Run);
        }

        Change("UPDATE meta SET value = '999' WHERE key = 'schema_version'");

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var again = opening.File;

        Assert.Contains("newer", opening.SetAside, StringComparison.Ordinal);
        Assert.Equal(1, opening.Memory!.Items["north/high-water/latched"]);
    }

    [Fact]
    public void ANewerVersionThatRemembersInAnotherWayIsNotCalledCorrupt()
    {
        using (JournalFile.Open(Path))
        {
        }

        Change("UPDATE meta SET value = '999' WHERE key = 'schema_version'; DROP TABLE memory_taken");

        AssertPutAside("newer", File.ReadAllBytes(Path));
    }

    [Fact]
    public void AJournalThatCanOnlyBeReadStillTellsWhatItRemembers()
    {
        using (var file = JournalFile.Open(Path))
        {
            file.WriteLasting([new JournalEntry([Happenings.Event(1)], Happenings.Memory(("north/high-water/latched", 1)))], [], file.Run);
        }

        using var other = JournalFile.Connect(Path, SqliteOpenMode.ReadWrite);
        using var hold = other.CreateCommand();
        hold.CommandText = "BEGIN IMMEDIATE";
        hold.ExecuteNonQuery();

        var opening = JournalOpening.Open(Path, Happenings.Noon);

        Assert.Null(opening.File);
        Assert.NotNull(opening.Unusable);
        Assert.Equal(1, opening.Memory!.Items["north/high-water/latched"]);
    }

    /// <summary>Whoever holds the whole file for a while keeps it from being read, and so from being known.</summary>
    [Fact]
    public void WhatCouldNotBeReadAtTheStartIsNeverWrittenOver()
    {
        using (var file = JournalFile.Open(Path))
        {
            file.WriteLasting([new JournalEntry([Happenings.Event(1)], Happenings.Memory(("north/high-water/latched", 1)))], [], file.Run);
        }

        JournalOpening opening;
        using (var other = JournalFile.Connect(Path, SqliteOpenMode.ReadWrite))
        {
            using var hold = other.CreateCommand();
            hold.CommandText = "PRAGMA locking_mode = EXCLUSIVE; BEGIN EXCLUSIVE; UPDATE meta SET value = value; COMMIT";
            hold.ExecuteNonQuery();
            opening = JournalOpening.Open(Path, Happenings.Noon);
        }

        Assert.Null(opening.File);
        Assert.True(opening.IsUnread);
        var again = opening.Again(Path, Happenings.Noon);
        using var file2 = again.File;
        Assert.Contains("could not be read when the controller started", again.SetAside, StringComparison.Ordinal);
        Assert.Equal(
            ["1"],
            JournalReader.Column(folder.File("journal-20260601T120000Z-unread.db"), "SELECT value FROM memory WHERE key LIKE '%latched'"));
    }

    [Fact]
    public void AFolderThatIsNotThereLeavesTheControllerWithoutAJournalAndSaysWhy()
    {
        var opening = JournalOpening.Open(folder.File("no/such/folder/journal.db"), Happenings.Noon);

        Assert.Null(opening.File);
        Assert.NotNull(opening.Unusable);
        Assert.NotNull(opening.Memory);
        Assert.Empty(opening.Memory.Items);
    }

    [Fact]
    public void EventsAreWrittenWithFullDurabilityAndSamplesWithLess()
    {
        using var file = JournalFile.Open(Path);

        file.WriteQuietly(null, [new Sample(Happenings.Noon, "north/air", 21.5)], [], 1);
        Assert.Equal("NORMAL", file.Synchronous());
        file.WriteLasting([new JournalEntry([Happenings.Event(1)], null)], [], file.Run);
        Assert.Equal("FULL", file.Synchronous());
    }

    public void Dispose() => folder.Dispose();

    private void Change(string sql)
    {
        using var connection = JournalFile.Connect(Path, SqliteOpenMode.ReadWrite);
        using var command = connection.CreateCommand();
        command.CommandText = sql + "; PRAGMA wal_checkpoint(TRUNCATE)";
        command.ExecuteNonQuery();
    }

    private void AssertPutAside(string kind, byte[] bytes)
    {
        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var file = opening.File;

        Assert.NotNull(file);
        var aside = folder.File($"journal-20260601T120000Z-{kind}.db");
        Assert.Equal(bytes, File.ReadAllBytes(aside));
        Assert.Contains(System.IO.Path.GetFileName(aside), opening.SetAside, StringComparison.Ordinal);
        Assert.NotNull(opening.Memory);
        Assert.Empty(opening.Memory.Items);
        file.WriteLasting([new JournalEntry([Happenings.Event(1)], null)], [], file.Run);
        Assert.Equal(["number 1"], JournalReader.Events(Path));
    }
}
