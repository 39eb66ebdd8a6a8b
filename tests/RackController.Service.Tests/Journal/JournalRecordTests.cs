using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;
using RackController.Testing;

namespace RackController.Service.Tests;

/// <summary>The record that a journal keeps for replays: that it is whole, how long it is kept, and how it is read.</summary>
public sealed class JournalRecordTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly TemporaryFolder folder = new();

    private string Path => folder.File("journal.db");

    [Fact]
    public void AJournalFromBeforeThereWereRecordsKeepsWhatItHasAndBeginsOne()
    {
        Change("""
            CREATE TABLE meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
            CREATE TABLE events (
                id INTEGER PRIMARY KEY, run INTEGER NOT NULL, monotonic INTEGER NOT NULL, wall INTEGER NOT NULL,
                wall_trusted INTEGER NOT NULL, kind TEXT NOT NULL, subject TEXT NOT NULL, what TEXT NOT NULL, because TEXT NOT NULL);
            CREATE TABLE memory (key TEXT PRIMARY KEY, value INTEGER NOT NULL) WITHOUT ROWID;
            CREATE TABLE memory_taken (
                one INTEGER PRIMARY KEY CHECK (one = 1), saved_at INTEGER NOT NULL, wall_trusted INTEGER NOT NULL);
            CREATE TABLE sensors (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE);
            CREATE TABLE samples (wall INTEGER NOT NULL, sensor INTEGER NOT NULL REFERENCES sensors (id), value REAL);
            INSERT INTO meta VALUES ('schema_version', '1'), ('run', '7');
            INSERT INTO events VALUES (1, 7, 1, 2, 1, 'Load', 'north/pump', 'on', 'of old');
            INSERT INTO memory VALUES ('north/latch', 1);
            INSERT INTO memory_taken VALUES (1, 3, 1);
            """);

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using (var file = opening.File!)
        {
            Assert.Null(opening.SetAside);
            Assert.Equal(8, file.Run);
            Assert.Equal(1, opening.Memory!.Items["north/latch"]);
            file.WriteRun(file.Run, Happenings.Facts);
            file.WriteQuietly(null, [], [Page(1)], file.Run);
        }

        Assert.Equal(["of old"], JournalReader.Events(Path));
        Assert.Equal(["2"], JournalReader.Column(Path, "SELECT value FROM meta WHERE key = 'schema_version'"));
        using var record = JournalRecord.Open(Path);
        Assert.Equal(Page(1).Body, Assert.Single(Assert.Single(record.Runs()).Pages));
    }

    [Fact]
    public void AnEventIsCommittedTogetherWithTheRecordThatLeadsUpToIt()
    {
        using var clock = new StillClock();
        using var journal = new Journal(
            Path, JournalOpening.Open(Path, Happenings.Noon), Sites.OneRack(), clock, new ControllerAlarms(clock), Happenings.Facts);
        Assert.True(journal.TryTake(Page(1)));
        journal.Happened([Happenings.Event(1)], null);
        journal.Start();

        SpinWait.SpinUntil(() => journal.Committed == 1, Patience);

        using var record = JournalRecord.Open(Path);
        var run = Assert.Single(record.Runs());
        Assert.Single(run.Pages);
        Assert.Equal(Happenings.Facts.RackFileText, run.Facts!.RackFileText);
        Assert.Equal(Happenings.Facts.Names.Loads.AsEnumerable(), run.Facts.Names.Loads);
        Assert.Equal("number 1", record.Because(Happenings.Event(1).At, "north/pump"));
        Assert.True(journal.Stop(Patience));
    }

    [Fact]
    public void AJournalInUseIsReadWithoutHoldingItUp()
    {
        using var service = new RecordedService(Sites.OneRack(), Path, PlantStart.Default);
        service.Boot();
        service.Run(Duration.FromHours(1));
        using var record = JournalRecord.Open(Path);
        Assert.NotEmpty(record.Runs());

        service.Ask(new FloodNow("Ada", new RackId(0)));
        service.Run(Duration.FromHours(1));
        service.End();

        Assert.Equal(0, Assert.Single(service.Replay()).DifferenceCount);
        Assert.Null(record.Damage);
    }

    [Fact]
    public void WhatIsOlderThanItIsKeptGoesWithWhatNobodyNeedsAnyMore()
    {
        using (var file = JournalFile.Open(Path))
        {
            file.WriteRun(1, Happenings.Facts with { RackFileText = "of old" });
            file.WriteQuietly(null, [], [.. Enumerable.Range(0, 150).Select(Page)], 1);
            file.WriteRun(2, Happenings.Facts);
            file.WriteQuietly(null, [], [.. Enumerable.Range(150, 150).Select(Page)], 2);

            file.ForgetRecording(Page(200).Begins.Wall, long.MaxValue);
            file.ForgetRecording(Page(200).Begins.Wall, long.MaxValue);
        }

        using var record = JournalRecord.Open(Path);
        var run = Assert.Single(record.Runs());
        Assert.Equal((2, 100), (run.Number, run.Pages.Count()));
        Assert.Equal([Happenings.Facts.RackFileText], JournalReader.Column(Path, "SELECT text FROM rack_files"));
    }

    [Fact]
    public void AClockThatWasWrongForAWhileLetsNothingYoungGo()
    {
        using (var file = JournalFile.Open(Path))
        {
            file.WriteQuietly(null, [], [Page(500), Page(0), Page(501)], 1);
            file.ForgetRecording(Page(400).Begins.Wall, long.MaxValue);
        }

        Assert.Equal(["3"], JournalReader.Column(Path, "SELECT count(*) FROM recording"));
    }

    [Fact]
    public void OfAJournalThatIsTooLargeTheOldestGoesALittleAtATime()
    {
        using (var file = JournalFile.Open(Path))
        {
            file.WriteQuietly(null, [], [.. Enumerable.Range(0, 500).Select(Page)], 1);
            file.ForgetRecording(null, mostBytes: 1000);
        }

        Assert.Equal(["201"], JournalReader.Column(Path, "SELECT min(id) FROM recording"));
    }

    [Theory]
    [InlineData("missing.db", null, "there is no such file")]
    [InlineData("", null, "this is a folder")]
    [InlineData("journal.db", "a shopping list", "this is no journal that can be read")]
    [InlineData("journal.db", "", "this is no journal")]
    public void WhatIsNoJournalIsSaidInOneLine(string name, string? content, string complaint)
    {
        if (content is not null)
        {
            File.WriteAllText(Path, content);
        }

        var refusal = Assert.Throws<CouldNotRunException>(() => JournalRecord.Open(System.IO.Path.Combine(folder.Path, name)));

        Assert.Contains(complaint, refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refusal.Message);
    }

    [Theory]
    [InlineData("1", "from before there were records")]
    [InlineData("99", "a newer version")]
    public void AJournalOfAnotherVersionIsSaid(string version, string complaint)
    {
        using (JournalFile.Open(Path))
        {
        }

        Change($"UPDATE meta SET value = '{version}' WHERE key = 'schema_version'");

        var refusal = Assert.Throws<CouldNotRunException>(() => JournalRecord.Open(Path));
        Assert.Contains(complaint, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatATruncatedJournalStillGivesIsRead()
    {
        WriteLongRecord();
        using (var stream = File.OpenWrite(Path))
        {
            stream.SetLength(stream.Length / 2 / 4096 * 4096);
        }

        using var record = JournalRecord.Open(Path);
        var pages = record.Runs().Sum(run => run.Pages.Count());
        Assert.NotNull(record.Damage);
        Assert.InRange(pages, 100, 300);
    }

    [Fact]
    public void WhatLiesBeforeADamageIsRead()
    {
        WriteLongRecord();
        var bytes = File.ReadAllBytes(Path);
        bytes.AsSpan(bytes.Length / 2 / 4096 * 4096, 8 * 4096).Fill(0x5A);
        File.WriteAllBytes(Path, bytes);

        using var record = JournalRecord.Open(Path);
        var pages = record.Runs().Sum(run => run.Pages.Count());
        Assert.NotNull(record.Damage);
        Assert.InRange(pages, 100, 300);
    }

    [Fact]
    public void WhatLiesBeforeARowThatMakesNoSenseIsRead()
    {
        WriteLongRecord();
        Change("""
            PRAGMA writable_schema = ON;
            UPDATE sqlite_schema SET sql = replace(sql, 'run INTEGER NOT NULL', 'run INTEGER') WHERE name = 'recording';
            """);
        Change("UPDATE recording SET run = NULL WHERE id = 300");

        using var record = JournalRecord.Open(Path);
        var pages = record.Runs().Sum(run => run.Pages.Count());
        Assert.Contains("makes no sense", record.Damage, StringComparison.Ordinal);
        Assert.Equal(299, pages);
    }

    public void Dispose() => folder.Dispose();

    private static PageBytes Page(int hour) => new(
        new Moment(MonotonicTime.Zero, Happenings.Noon + Duration.FromHours(hour), WallTrusted: true), [(byte)(hour & 0xff), 2, 3]);

    private void WriteLongRecord()
    {
        using var file = JournalFile.Open(Path);
        file.WriteRun(1, Happenings.Facts);
        file.WriteQuietly(null, [], [.. Enumerable.Range(0, 400).Select(number => Page(number) with { Body = new byte[2000] })], 1);
    }

    private void Change(string sql)
    {
        using var connection = JournalFile.Connect(Path, SqliteOpenMode.ReadWriteCreate);
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
