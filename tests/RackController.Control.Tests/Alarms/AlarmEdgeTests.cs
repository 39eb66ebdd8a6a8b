using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Alarms;

/// <summary>What an alarm does with what nobody should ask of it.</summary>
public class AlarmEdgeTests
{
    private static readonly Moment start = new(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);

    [Fact]
    public void AnAlarmThatDoesNotExistIsNamedInTheAnswer()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Scan(
            new Acknowledge("Ada", "attic/x"), new Shelve("Ada", "attic/x", Duration.FromHours(1)),
            new Unshelve("Ada", "attic/x"), new SetAlarmOutOfService("Ada", "attic/x", true));

        Assert.Equal(
            [
                "acknowledge: there is no alarm attic/x", "shelve: there is no alarm attic/x", "unshelve: there is no alarm attic/x",
                "there is no alarm attic/x",
            ],
            rig.Events.Where(each => each.Kind == EventKind.Request).Select(each => each.What));
    }

    [Fact]
    public void AnAlarmIsNeverShelvedForLongerThanADayOrForLessThanNothing()
    {
        var alarm = new AlarmPoint("north/low-float");
        alarm.Follow(present: true, latched: false, suppressed: false, start);

        Assert.Throws<InvariantBrokenException>(() => alarm.Shelve(AlarmPoint.LongestShelving + Duration.Epsilon, start));
        Assert.Throws<InvariantBrokenException>(() => alarm.Shelve(-Duration.Epsilon, start));
        Assert.True(alarm.Shelve(AlarmPoint.LongestShelving, start));
    }

    [Theory]
    [InlineData(99, AlarmState.Normal)]
    [InlineData(-1, AlarmState.Normal)]
    [InlineData((long)AlarmState.OutOfService + 1, AlarmState.Normal)]
    [InlineData((long)AlarmState.OutOfService, AlarmState.OutOfService)]
    [InlineData((long)AlarmState.Shelved, AlarmState.Shelved)]
    public void AStateThatThisVersionDoesNotKnowIsForgottenAndATimeThatWasNotKeptIsOver(long remembered, AlarmState restored)
    {
        var alarm = new AlarmPoint("north/low-float");
        var writer = new MemoryWriter(start, expected: 0);
        writer.Put("north/low-float/alarm/state", remembered);
        alarm.Restore(new MemoryReader(writer.ToMemory(), start), start);

        Assert.Equal(restored, alarm.State);
        Assert.Equal(restored == AlarmState.Shelved ? start.Monotonic : MonotonicTime.Never, alarm.Due);
    }

    [Fact]
    public void WhatIsNoStateOfTheStandardHasNoWords() =>
        Assert.Throws<InvariantBrokenException>(() => ((AlarmState)99).InWords());
}
