using Microsoft.Data.Sqlite;
using NodaTime;
using RackController.Growing;

namespace RackController.Service.Tests;

public sealed class BookFileTests : IDisposable
{
    private static readonly Instant at = Instant.FromUtc(2026, 5, 1, 6, 30);
    private static readonly LocalDate day = new(2026, 5, 1);

    private static readonly LitStage stage = new()
    {
        Name = "light",
        Days = new(5, 9),
        DailyLightMolPerM2D = new(7, 14),
        PpfdUmolPerM2S = new(100, 400),
        PhotoperiodH = new(12, 18),
        Floods = [new(null, new(1, 3)), new("hemp mat", new(2, 4))],
    };

    public static readonly TheoryData<BookEntry> Everything =
    [
        new BatchTakenUp(
            at, "Ada", "PEA-1", "pea \"dwarf\" – ü", 3, day, [stage], [new(day.PlusDays(3), 0, [new("north/tier 2", 3)])], day.PlusDays(9),
            "the inn, 1.2 kg"),
        new BatchReplanned(at, "Ada", "PEA-1", [new(day.PlusDays(4), 0, [new("north/tier 1", 3)])], day.PlusDays(10), "the inn"),
        new BatchSown(at, "Ada", "PEA-1", day, "bag 17"),
        new BatchMoved(at, "Ada", "PEA-1", day, 0, [new("north/tier 2", 2), new("north/tier 1", 1)]),
        new BatchHarvested(at, "Ada", "PEA-1", day, 2, 812.5, "the inn") { From = [new("north/tier 2", 2)] },
        new BatchDiscarded(at, "Ada", "PEA-1", day, 1, "mould"),
        new BatchNoted(at, "Ada", "PEA-1", "slow to come"),
        new UpkeepDone(at, "Ada", "screen", "north", ""),
        new EntryStruck(at, "Ada", 4, "wrong tray"),
    ];

    private readonly TemporaryFolder folder = new();

    private BookFile Book => new(Path);

    private string Path => folder.File("book.db");

    public void Dispose() => folder.Dispose();

    [Theory]
    [MemberData(nameof(Everything))]
    public void AnEntryIsReadAsItWasPutDown(BookEntry entry)
    {
        Book.Write(entry);

        // Lists inside of records compare by reference, so their words are compared.
        Assert.Equivalent(entry, Assert.Single(Book.Read().Entries).Entry, strict: true);
    }

    [Fact]
    public void EntriesAreNumberedInTheirOrderAndNoNumberIsUsedTwice()
    {
        Book.Write(new BatchNoted(at, "Ada", "PEA-1", "one"));
        var written = Book.Write([new BatchNoted(at, "Ada", "PEA-1", "two"), new BatchNoted(at, "Ada", "PEA-1", "three")]);

        Assert.Equal([2, 3], written.Select(one => one.Number));
        Assert.Equal([1, 2, 3], Book.Read().Entries.Select(one => one.Number));
    }

    [Theory]
    [InlineData("DELETE FROM entries")]
    [InlineData("UPDATE entries SET entry = '{}'")]
    public void TheDatabaseItselfRefusesToChangeWhatWasPutDown(string sql)
    {
        Book.Write(new BatchNoted(at, "Ada", "PEA-1", "one"));

        Assert.Contains("entries stay", Assert.Throws<SqliteException>(() => Run(sql)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("{\"kind\":\"sung\",\"at\":\"2026-05-01T06:30:00Z\",\"by\":\"Ada\"}")]
    [InlineData("{\"kind\":\"noted\",\"at\":\"2026-05-01T06:30:00Z\",\"by\":null,\"lot\":\"PEA-1\",\"text\":\"x\"}")]
    [InlineData("{\"kind\":\"moved\",\"at\":\"2026-05-01T06:30:00Z\",\"by\":\"Ada\",\"lot\":\"PEA-1\",\"day\":\"2026-05-01\",\"stage\":0}")]
    [InlineData("no JSON at all")]
    public void AnEntryThatCannotBeReadIsNamedAndTheOthersAreRead(string text)
    {
        Book.Write(new BatchNoted(at, "Ada", "PEA-1", "one"));
        Run($"INSERT INTO entries (at, entry) VALUES (0, '{text}')");
        Book.Write(new BatchNoted(at, "Ada", "PEA-1", "three"));

        var reading = Book.Read();
        Assert.Equal([1, 3], reading.Entries.Select(one => one.Number));
        Assert.Equal(2, Assert.Single(reading.Unreadable));
    }

    [Fact]
    public void ABookThatIsNotThereYetIsEmptyAndIsNotMadeByReading()
    {
        Assert.Empty(Book.Read().Entries);
        Assert.False(File.Exists(Path));
    }

    [Fact]
    public void AFileThatIsNoBookIsToldAndLeftAsItIs()
    {
        File.WriteAllText(Path, "a shopping list, and a long one: it goes on and on and on and on and on and on and on and on and on");

        Assert.Contains("book.db", Assert.Throws<IOException>(() => Book.Read()).Message, StringComparison.Ordinal);
        Assert.Throws<IOException>(() => Book.Write(new BatchNoted(at, "Ada", "PEA-1", "one")));
        Assert.StartsWith("a shopping list", File.ReadAllText(Path), StringComparison.Ordinal);
    }

    [FullDiskFact]
    public void AFullDiskKeepsNothingOfAnEntryAndSaysSo()
    {
        using var disk = new TinyDisk(folder.Path, kibibytes: 128);
        var book = new BookFile(System.IO.Path.Combine(disk.Path, "book.db"));
        book.Write(new BatchNoted(at, "Ada", "PEA-1", "one"));
        var ballast = disk.Fill();

        Assert.Contains(
            "the growing book cannot be used",
            Assert.Throws<IOException>(() => book.Write(new BatchNoted(at, "Ada", "PEA-1", new string('x', 8000)))).Message,
            StringComparison.Ordinal);

        File.Delete(ballast);
        book.Write(new BatchNoted(at, "Ada", "PEA-1", "two"));
        Assert.Equal(["one", "two"], book.Read().Entries.Select(one => Assert.IsType<BatchNoted>(one.Entry).Text));
    }

    private void Run(string sql)
    {
        using var connection = JournalFile.Connect(Path, SqliteOpenMode.ReadWrite);
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
