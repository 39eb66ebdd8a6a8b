using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Alarms;

/// <summary>What becomes of what people ask of an alarm, how it comes back into sight, and in which order alarms stand.</summary>
public class AlarmPanelTests
{
    private const string Low = "north/low-float";
    private readonly Rig rig = new(Sites.OneRack());

    [Fact]
    public void WhoAcknowledgesIsOnRecordAndNothingIsAcknowledgedTwice()
    {
        RunDry();
        var version = rig.Control.MemoryVersion;
        Assert.Equal("acknowledge: acknowledged", Answer(new Acknowledge("Ada", Low)));
        Assert.Equal(("acknowledged", "Ada acknowledged it"), LastOfAlarm());
        Assert.True(rig.Control.MemoryVersion > version);

        var told = rig.Events.Count(each => each.Kind == EventKind.Alarm);
        Assert.Equal("acknowledge: north/low-float is acknowledged and needs no acknowledgement", Answer(new Acknowledge("Ben", Low)));
        Assert.Equal(told, rig.Events.Count(each => each.Kind == EventKind.Alarm));
    }

    [Theory]
    [InlineData(60, "shelve: shelved", "Ada shelved it for 1 h")]
    [InlineData(24 * 60, "shelve: shelved", "Ada shelved it for 24 h")]
    [InlineData(24 * 60 + 1, "shelve: shelved for 24 h, the longest that is allowed", "Ada shelved it for 24 h")]
    public void AnAlarmIsShelvedForADayAtMost(int minutes, string answer, string because)
    {
        RunDry();
        Assert.Equal(answer, Answer(new Shelve("Ada", Low, Duration.FromMinutes(minutes))));
        Assert.Equal(("shelved", because), LastOfAlarm());
        Assert.Equal("shelve: north/low-float is shelved and cannot be shelved", Answer(new Shelve("Ben", Low, Duration.FromHours(1))));
    }

    [Fact]
    public void ShelvedForLessThanNothingItComesBackAtOnce()
    {
        RunDry();
        Answer(new Shelve("Ada", Low, Duration.FromHours(-1)));
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Low)!.State);
    }

    [Fact]
    public void WhatWasShelvedComesBackOnTimeAndThenNothingIsDueAnyMore()
    {
        RunDry();
        rig.Scan(new Shelve("Ada", Low, Duration.FromMinutes(7)));
        var shelved = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Alarm(Low)!.State != AlarmState.Shelved);
        Assert.Equal(Duration.FromMinutes(7), rig.Now.Monotonic - shelved);
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Low)!.State);

        rig.ScanFor(Duration.FromSeconds(2));
        Assert.True(rig.Control.NextChange > rig.Now.Monotonic + Duration.FromSeconds(10));
    }

    [Fact]
    public void WhatWasShelvedSaysUntilWhenAndComesBackWhenSomebodyAsks()
    {
        RunDry();
        rig.Scan(new Shelve("Ada", Low, Duration.FromHours(8)));
        Assert.Equal(rig.Now.Wall + Duration.FromHours(8), rig.Alarm(Low)!.ShelvedUntil);

        Assert.Equal("unshelve: in sight again, and unacknowledged", Answer(new Unshelve("Ada", Low)));
        Assert.Equal(("unacknowledged", "Ada took it off the shelf"), LastOfAlarm());
        Assert.Null(rig.Alarm(Low)!.ShelvedUntil);
        Assert.Equal("unshelve: north/low-float is unacknowledged and not shelved", Answer(new Unshelve("Ben", Low)));
    }

    [Fact]
    public void OutOfServiceAndBackAreSaidAndAreNotDoneTwice()
    {
        Assert.Equal(
            "taken out of service until somebody puts it back", Answer(new SetAlarmOutOfService("Ada", Low, OutOfService: true)));
        Assert.Equal(("out of service", "Ada took it out of service"), LastOfAlarm());
        Assert.Equal("north/low-float is out of service already", Answer(new SetAlarmOutOfService("Ben", Low, OutOfService: true)));
        Assert.Equal("back in service, and normal", Answer(new SetAlarmOutOfService("Ada", Low, OutOfService: false)));
        Assert.Equal(("normal", "Ada put it back into service"), LastOfAlarm());
        Assert.Equal("north/low-float is in service already", Answer(new SetAlarmOutOfService("Ben", Low, OutOfService: false)));
    }

    [Fact]
    public void TheMostUrgentStandsFirstAndEqualsStandByName()
    {
        var many = new Rig(Sites.ManyRacks(2, racksToACircuit: 2));
        many.ScanFor(Duration.FromSeconds(5));
        many.Set("rack 1/reservoir low float", 0);
        many.Set("rack 2/reservoir low float", 0);
        many.Set("rack 2/leak rope", 1);
        many.ScanFor(Duration.FromSeconds(1));

        Assert.Equal(["rack 2/high-water", "rack 1/low-float", "rack 2/low-float"], many.Control.Alarms().Select(alarm => alarm.Key));
    }

    [Fact]
    public void ARestartForgetsNeitherWhatWasSeenNorHowLongItWasToStayOutOfSight()
    {
        RunDry();
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Set("north/leak rope", 0);
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Scan(new Acknowledge("Ada", "north/high-water"), new Shelve("Ada", Low, Duration.FromMinutes(30)));
        Assert.Equal(AlarmState.Latched, rig.Alarm("north/high-water")!.State);
        rig.LeapFor(Duration.FromMinutes(10));
        rig.Restart(Duration.FromMinutes(1));
        rig.Scan();
        Assert.Equal(AlarmState.Latched, rig.Alarm("north/high-water")!.State);
        Assert.Equal(rig.Now.Wall - Duration.FromMilliseconds(100), rig.Alarm("north/high-water")!.Since.Wall);

        rig.LeapFor(Duration.FromMinutes(19));
        Assert.Equal(AlarmState.Shelved, rig.Alarm(Low)!.State);
        rig.LeapFor(Duration.FromMinutes(2));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Low)!.State);
    }

    private void RunDry()
    {
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Set("north/reservoir low float", 0);
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Low)!.State);
    }

    private string Answer(OperatorRequest request)
    {
        rig.Scan(request);
        return rig.Events.Last(each => each.Kind == EventKind.Request).What;
    }

    private (string What, string Because) LastOfAlarm()
    {
        var last = rig.Events.Last(each => each.Kind == EventKind.Alarm);
        return (last.What, last.Because);
    }
}
