using NodaTime;
using RackController.Testing;

namespace RackController.Service.Tests;

/// <summary>
/// Every call that the service makes while it drives a rack fails in the midst of a flood: once, and then for good over the rest of the
/// flood and longer than any pump may run. No pump stays on past its limit (the rig judges that at every scan), it is an alarm, and when
/// the call works again there is another flood. <see cref="FallibleCalls"/> lists the calls.
/// </summary>
public sealed class FailingCallTests : IDisposable
{
    private const string InputsOrOutputs = "controller/scan-fault";
    private const string JournalAlarm = "controller/journal";

    private static readonly Duration LongerThanAnyRun = Duration.FromMinutes(25);

    private readonly CallRig rig = new();

    [Fact]
    public void AContactCannotBeRead() => InputsOrOutputsFail(
        () => rig.Contacts.Fail(GpioCall.Read, CallRig.LowFloatLine), () => rig.Contacts.Mend());

    [Fact]
    public void TheChipOfTheContactsIsGone() => InputsOrOutputsFail(
        () => rig.Contacts.IsGone = true, () => rig.Contacts.IsGone = false);

    [Fact]
    public void ARelayCannotBeReadBack() => InputsOrOutputsFail(
        () => rig.Relays.Fail(GpioCall.Read, rig.PumpLine), () => rig.Relays.Mend());

    [Fact]
    public void ARelayCannotBeWritten() => InputsOrOutputsFail(
        () => rig.Relays.Fail(GpioCall.Write, rig.PumpLine), () => rig.Relays.Mend());

    [Fact]
    public void NoRelayCanBeWritten() => InputsOrOutputsFail(
        () => rig.Relays.Fail(GpioCall.Write), () => rig.Relays.Mend());

    [Fact]
    public void ARelayCanBeWrittenAndNotBeClaimedAgain() => InputsOrOutputsFail(
        () =>
        {
            rig.Relays.Fail(GpioCall.Read, rig.PumpLine);
            rig.Relays.Fail(GpioCall.Claim, rig.PumpLine);
        },
        () => rig.Relays.Mend());

    [Fact]
    public void EdgesCannotBeWatchedAgain() => InputsOrOutputsFail(
        () =>
        {
            rig.Contacts.Fail(GpioCall.Read);
            rig.Contacts.Fail(GpioCall.Watch);
        },
        () => rig.Contacts.Mend());

    [Theory]
    [InlineData("INSERT ON events")]
    [InlineData("INSERT ON memory")]
    [InlineData("INSERT ON memory_taken")]
    [InlineData("INSERT ON samples")]
    [InlineData("INSERT ON recording")]
    [InlineData("INSERT ON recorded_runs")]
    [InlineData("UPDATE ON meta")]
    public void TheJournalTakesNoMore(string what) => JournalFails(
        () =>
        {
            rig.Tamper($"CREATE TRIGGER sabotage BEFORE {what} BEGIN SELECT RAISE(ABORT, 'disk I/O error'); END");

            // What is done once when a journal is opened fails when it is opened again.
            rig.Tamper("CREATE TRIGGER reopen BEFORE INSERT ON events BEGIN SELECT RAISE(ABORT, 'disk I/O error'); END");
        },
        () => rig.Tamper("DROP TRIGGER sabotage; DROP TRIGGER reopen"));

    [Fact]
    public void AnotherProgramHoldsTheJournal()
    {
        Microsoft.Data.Sqlite.SqliteConnection? other = null;
        JournalFails(
            () =>
            {
                other = JournalFile.Connect(rig.JournalPath, Microsoft.Data.Sqlite.SqliteOpenMode.ReadWrite);
                using var hold = other.CreateCommand();
                hold.CommandTimeout = 20;
                hold.CommandText = "BEGIN IMMEDIATE";
                hold.ExecuteNonQuery();
            },
            () => other!.Dispose());
    }

    [Fact]
    public void TheStateFolderVanishesWhileTheRackIsDriven()
    {
        rig.Flood();
        Directory.Delete(Path.GetDirectoryName(rig.JournalPath)!, recursive: true);

        rig.RunUntil(() => rig.Stands("controller/journal-set-aside"), "the alarm is raised");
        rig.RunUntil(() => rig.IsKept && !rig.Stands(JournalAlarm), "a new journal is begun");
        rig.Flood();

        rig.RunUntil(() => rig.IsKept, "all is kept");
        Assert.True(File.Exists(rig.JournalPath));
        Assert.NotEmpty(JournalReader.Column(rig.JournalPath, "SELECT key FROM memory"));
    }

    public void Dispose() => rig.Dispose();

    private void InputsOrOutputsFail(Action breakIt, Action mendIt)
    {
        rig.Flood();
        breakIt();
        rig.RunUntil(() => rig.Stands(InputsOrOutputs), "the alarm is raised");
        mendIt();
        rig.Run(Duration.FromMinutes(2));
        Assert.False(rig.Stands(InputsOrOutputs));

        rig.Flood();
        breakIt();
        rig.RunUntil(() => rig.Stands(InputsOrOutputs), "the alarm is raised");
        rig.Run(Duration.FromSeconds(5));
        Assert.False(rig.IsPumpDriven);
        rig.Run(LongerThanAnyRun);
        Assert.True(rig.Stands(InputsOrOutputs));
        mendIt();
        rig.Flood();
        Assert.False(rig.Stands(InputsOrOutputs));
    }

    private void JournalFails(Action breakIt, Action mendIt)
    {
        rig.Flood();
        breakIt();
        rig.RunUntil(() => rig.Stands(JournalAlarm), "the alarm is raised");
        mendIt();
        rig.RunUntil(() => rig.IsKept && !rig.Stands(JournalAlarm), "all is kept once it can be");

        rig.Flood();
        breakIt();
        rig.Run(LongerThanAnyRun);
        rig.RunUntil(() => rig.Stands(JournalAlarm), "the alarm is raised");
        rig.Flood();
        mendIt();
        rig.RunUntil(() => rig.IsKept && !rig.Stands(JournalAlarm), "all is kept once it can be");
    }
}
