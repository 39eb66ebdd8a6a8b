using RackController.Control;

namespace RackController.Service.Tests;

public sealed class ControllerAlarmsTests : IDisposable
{
    private const string Journal = "controller/journal";

    private readonly StillClock clock = new();
    private readonly ControllerAlarms alarms;

    public ControllerAlarmsTests() => alarms = new ControllerAlarms(clock);

    [Fact]
    public void AcknowledgingTwiceLeavesAnAlarmStandingWhoseCauseIsThere()
    {
        alarms.Raise(ControllerTrouble.JournalUnwritable, "the disk is full");
        Assert.True(alarms.TryAcknowledge(Journal));
        Assert.True(alarms.TryAcknowledge(Journal));

        Assert.Equal(AlarmState.Acknowledged, alarms.Active().Single().State);
        alarms.Clear(ControllerTrouble.JournalUnwritable);
        Assert.Empty(alarms.Active());
    }

    [Fact]
    public void AnAlarmThatReturnedBeforeAnybodySawItStaysUntilSomebodyDoes()
    {
        alarms.Raise(ControllerTrouble.JournalUnwritable, "the disk is full");
        alarms.Clear(ControllerTrouble.JournalUnwritable);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, alarms.Active().Single().State);

        Assert.True(alarms.TryAcknowledge(Journal));
        Assert.Empty(alarms.Active());
    }

    [Fact]
    public void AnAlarmIsRaisedAlsoWhereTheClockFails()
    {
        alarms.Raise(ControllerTrouble.DiskNearlyFull, "20 MB are left");
        var known = alarms.Active().Single().Since;
        clock.Broken = new RackController.Model.InvariantBrokenException("the kernel has no clock");

        alarms.Raise(ControllerTrouble.JournalUnwritable, "the disk is full");

        Assert.Equal(known with { WallTrusted = false }, alarms.Active().Single(alarm => alarm.Key == Journal).Since);
    }

    [Fact]
    public void WhatStaysSoIsSaidUntilSomebodyHasSeenIt()
    {
        alarms.Raise(ControllerTrouble.JournalSetAside, "the journal was corrupt");
        Assert.Equal(AlarmState.Unacknowledged, alarms.Active().Single().State);

        Assert.True(alarms.TryAcknowledge("controller/journal-set-aside"));
        Assert.Empty(alarms.Active());
    }

    public void Dispose() => clock.Dispose();
}
