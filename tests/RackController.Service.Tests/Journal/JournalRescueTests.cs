using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;

namespace RackController.Service.Tests;

/// <summary>A journal that is damaged somewhere loses what lay there, and nothing else.</summary>
public sealed partial class JournalRescueTests : IDisposable
{
    private const int PageBytes = 1024;
    private const int Events = 3000;

    private readonly TemporaryFolder folder = new();

    private string Path => folder.File("journal.db");

    [Theory]
    [InlineData(40, 41)]
    [InlineData(30, 33, 35, 36, 50)]
    [InlineData(20)]
    public void AllThatLiesBesideTheDamageGoesOnInTheNewJournal(params int[] damaged)
    {
        var bytes = Written();
        foreach (var page in damaged)
        {
            bytes.AsSpan(page * PageBytes, PageBytes).Fill(0x5A);
        }

        File.WriteAllBytes(Path, bytes);

        AssertRescued(bytes);
    }

    [Theory]
    [InlineData(2048)]
    [InlineData(PageBytes)]
    [InlineData(20_000)]
    public void AJournalWhoseEndWasCutOffLosesItsEndAndNothingElse(int bytesCutOff)
    {
        var bytes = Written()[..^bytesCutOff];
        File.WriteAllBytes(Path, bytes);

        AssertRescued(bytes);
    }

    [Fact]
    public void TheSumsOfDaysGoOnInTheNewJournal()
    {
        var sum = new DaySum(new NodaTime.LocalDate(2026, 5, 30), "north/pump", DayFigure.HoursOn, 0.5, 0.5, 0.5);
        using (var journal = new MadeUpJournal(Path))
        {
            journal.Add([sum]);
            journal.Add([.. Enumerable.Range(1, 2000).Select(Happenings.Event)]);
        }

        var bytes = File.ReadAllBytes(Path);
        bytes.AsSpan(bytes.Length - 4 * PageBytes, PageBytes).Fill(0x5A);
        File.WriteAllBytes(Path, bytes);

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var file = opening.File;
        using var history = JournalHistory.Open(Path);

        Assert.Contains("is corrupt", opening.SetAside, StringComparison.Ordinal);
        Assert.Equal(sum, Assert.Single(history.Days(sum.Day, sum.Day)));
    }

    [Fact]
    public void AKillAfterTheBrokenJournalWasPutAsideLosesNothing()
    {
        Written();
        File.Move(Path, Path + ".rescued");
        File.WriteAllBytes(Path + "-wal", [1, 2, 3]);

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var file = opening.File;

        Assert.Equal(Events, JournalReader.Events(Path).Count);
        Assert.Equal(1, opening.Memory!.Items["north/high-water/latched"]);
        Assert.False(File.Exists(Path + ".rescued"));
    }

    [Fact]
    public void ADiskWithoutRoomForARescueKeepsTheBrokenJournalAndWhatItRemembers()
    {
        var bytes = Written();
        bytes.AsSpan(40 * PageBytes, PageBytes).Fill(0x5A);
        File.WriteAllBytes(Path, bytes);
        Directory.CreateDirectory(Path + ".rescued.new");

        var opening = JournalOpening.Open(Path, Happenings.Noon);

        Assert.Null(opening.File);
        Assert.False(opening.IsUnread);
        Assert.Equal(1, opening.Memory!.Items["north/high-water/latched"]);
        Assert.Equal(bytes, File.ReadAllBytes(Path));
    }

    /// <summary>As after a kill on a full disk: a write-ahead log, and no index of it.</summary>
    [FullDiskFact]
    public void AFullDiskStillTellsWhatIsRemembered()
    {
        using var disk = new TinyDisk(folder.Path, kibibytes: 512);
        var path = System.IO.Path.Combine(disk.Path, "journal.db");
        using (var file = JournalFile.Open(Path))
        {
            file.WriteLasting([new JournalEntry([Happenings.Event(1)], Happenings.Memory(("north/high-water/latched", 1)))], [], file.Run);
            File.Copy(Path, path);
            File.Copy(Path + "-wal", path + "-wal");
        }

        disk.Fill();

        var opening = JournalOpening.Open(path, Happenings.Noon);

        Assert.Null(opening.File);
        Assert.False(opening.IsUnread);
        Assert.Equal(1, opening.Memory!.Items["north/high-water/latched"]);
    }

    [Fact]
    public void AJournalThatTurnsOutToBeCorruptWhenItIsToBeWrittenIsPutAside()
    {
        JournalFile.Open(Path).Dispose();
        using (var older = JournalFile.Connect(Path, SqliteOpenMode.ReadWrite))
        using (var change = older.CreateCommand())
        {
            change.CommandText = """
                DROP TABLE days;
                PRAGMA writable_schema = ON;
                UPDATE sqlite_schema SET sql = replace(sql, 'CHECK (one', 'CHECK (won') WHERE name = 'memory_taken';
                """;
            change.ExecuteNonQuery();
        }

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var file = opening.File;
        Assert.NotNull(file);
        Assert.Contains("is corrupt", opening.SetAside, StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    private byte[] Written()
    {
        using (var file = JournalFile.Open(Path))
        {
            var memory = Happenings.Memory(("north/high-water/latched", 1), ("north/pump-daily-budget/used", 12_000));
            file.WriteLasting(
                [.. Enumerable.Range(1, Events).Select(
                    number => new JournalEntry([Happenings.Event(number) with { Because = $"number {number}." }], memory))],
                [],
                file.Run);
        }

        return File.ReadAllBytes(Path);
    }

    /// <summary>Every event ends with its number, in words that SQLite stores as they are: what can be read in a page goes on.</summary>
    private void AssertRescued(byte[] pages)
    {
        var legible = Number().Matches(Encoding.Latin1.GetString(pages))
            .Select(match => int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)).Distinct().Order().ToList();
        Assert.InRange(legible.Count, Events / 2, Events);

        var opening = JournalOpening.Open(Path, Happenings.Noon);
        using var file = opening.File;

        Assert.Equal(legible.Select(number => $"number {number}."), JournalReader.Events(Path));
        Assert.Contains($"{legible.Count} events", opening.SetAside, StringComparison.Ordinal);
        Assert.Equal(1, opening.Memory!.Items["north/high-water/latched"]);
        Assert.Equal(12_000, opening.Memory.Items["north/pump-daily-budget/used"]);
        Assert.Equal(2, file!.Run);
    }

    [GeneratedRegex(@"number ([1-9][0-9]{0,3})\.")]
    private static partial Regex Number();
}
