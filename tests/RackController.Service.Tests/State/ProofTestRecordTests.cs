using NodaTime;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class ProofTestRecordTests : IDisposable
{
    private const string Rope = "north/leak rope/proof-test";
    private static readonly Instant passedAt = Happenings.Noon + Duration.FromDays(-30);
    private readonly TemporaryFolder folder = new();

    private StateFolder State => new(System.IO.Path.GetDirectoryName(folder.File("journal.db"))!);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void WithoutAJournalNothingWasTestedAndNoneIsMade()
    {
        var tests = ProofTestRecord.Read(Sites.OneRack(), State, Happenings.Noon, out var isDriven);
        Assert.False(isDriven);
        Assert.All(tests, test => Assert.Null(test.PassedAt));
        Assert.False(File.Exists(State.Journal));
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(59, false)]
    [InlineData(61, true)]
    public void WhatWasPassedIsDueByTodaysDateHoweverLongTheRackWasOff(int daysOff, bool isOverdue)
    {
        Write(($"{Rope}/passed at", passedAt.ToUnixTimeMilliseconds()));
        var tests = ProofTestRecord.Read(
            Sites.OneRack(), State, Happenings.Noon + Duration.FromDays(daysOff), out var isDriven);
        var rope = tests.Single(test => test.Item == "north/leak rope");
        Assert.True(isDriven);
        Assert.Equal((passedAt, passedAt + Duration.FromDays(90), isOverdue), (rope.PassedAt!.Value, rope.DueAt, rope.IsOverdue));
    }

    [Fact]
    public void AFailureIsRemembered()
    {
        Write(($"{Rope}/failed", 1));
        Assert.Equal(
            "north/leak rope",
            Assert.Single(ProofTestRecord.Read(Sites.OneRack(), State, Happenings.Noon, out _), test => test.HasFailed).Item);
    }

    [Fact]
    public void AFileThatIsNoJournalCouldNotBeRead()
    {
        File.WriteAllText(State.Journal, "no journal");
        Assert.Throws<CouldNotRunException>(() => ProofTestRecord.Read(Sites.OneRack(), State, Happenings.Noon, out _));
    }

    private void Write(params (string Key, long Value)[] items)
    {
        using var file = JournalFile.Open(State.Journal);
        file.WriteLasting([new JournalEntry([], Happenings.Memory(items))], [], file.Run);
    }
}
