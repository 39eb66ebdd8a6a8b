using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Alarms;

/// <summary>The transitions of ISA-18.2-2016 figure 3 (from memory), and no others.</summary>
public class AlarmPointTests
{
    private readonly AlarmPoint alarm = new("north/low-float");
    private Moment now = new(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);

    [Fact]
    public void AConditionThatComesAndIsSeenAndGoesIsNormalAgain()
    {
        Assert.Equal(AlarmState.Unacknowledged, Follow(present: true));
        Assert.True(alarm.Acknowledge(now));
        Assert.Equal(AlarmState.Acknowledged, alarm.State);
        Assert.Equal(AlarmState.Normal, Follow(present: false));
    }

    [Fact]
    public void AConditionThatGoesUnseenStaysUntilAcknowledged()
    {
        Follow(present: true);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, Follow(present: false));
        Assert.Equal(AlarmState.Unacknowledged, Follow(present: true));
        Follow(present: false);
        Assert.True(alarm.Acknowledge(now));
        Assert.Equal(AlarmState.Normal, alarm.State);
    }

    [Fact]
    public void ALatchedAlarmStaysUntilItsReset()
    {
        Follow(present: true, latched: true);
        Assert.Equal(AlarmState.Unacknowledged, Follow(present: false, latched: true));
        alarm.Acknowledge(now);
        Assert.Equal(AlarmState.Latched, alarm.State);
        Assert.Equal(AlarmState.Latched, Follow(present: false, latched: true));
        Assert.Equal(AlarmState.Normal, Follow(present: false));
    }

    [Fact]
    public void ALatchedAlarmWhoseConditionReturnsMustBeSeenAgain()
    {
        Follow(present: true, latched: true);
        alarm.Acknowledge(now);
        Assert.Equal(AlarmState.Latched, Follow(present: false, latched: true));
        Assert.Equal(AlarmState.Unacknowledged, Follow(present: true, latched: true));
    }

    [Fact]
    public void AShelvedAlarmComesBackWhenItsTimeIsOver()
    {
        Follow(present: true);
        Assert.True(alarm.Shelve(Duration.FromHours(1), now));
        Assert.Equal(AlarmState.Shelved, Follow(present: true));
        Assert.Equal(MonotonicTime.Zero + Duration.FromHours(1), alarm.Due);
        Pass(Duration.FromHours(1));
        Assert.Equal(AlarmState.Unacknowledged, Follow(present: true));
    }

    [Fact]
    public void SuppressionHidesAnAlarmAndShowsItAgainAfterwards()
    {
        Follow(present: true);
        Assert.Equal(AlarmState.SuppressedByDesign, Follow(present: true, suppressed: true));
        Assert.Equal(AlarmState.Unacknowledged, Follow(present: true));
    }

    [Fact]
    public void AnAlarmOutOfServiceStaysSoUntilItIsPutBack()
    {
        alarm.SetOutOfService(true, now);
        Assert.Equal(AlarmState.OutOfService, Follow(present: true));
        Assert.False(alarm.Acknowledge(now));
        Assert.False(alarm.Shelve(Duration.FromHours(1), now));
        alarm.SetOutOfService(false, now);
        Assert.Equal(AlarmState.Unacknowledged, alarm.State);
    }

    [Fact]
    public void NothingIsOwedForANormalAlarm()
    {
        Assert.False(alarm.Acknowledge(now));
        Assert.False(alarm.Shelve(Duration.FromHours(1), now));
        Assert.False(alarm.SetOutOfService(false, now));
        Assert.Equal(AlarmState.Normal, alarm.State);
    }

    private AlarmState Follow(bool present, bool latched = false, bool suppressed = false)
    {
        alarm.Follow(present, latched, suppressed, now);
        return alarm.State;
    }

    private void Pass(Duration time) => now = now with { Monotonic = now.Monotonic + time, Wall = now.Wall + time };
}
