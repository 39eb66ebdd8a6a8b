using RackController.Model;

using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row clock-stepped.</summary>
public class ClockSteppedTests
{
    private const string Key = "controller/clock-stepped";
    private readonly Rig rig = new(Sites.OneRack());

    [Theory]
    [InlineData(0, 5, 0, "the wall clock was set on by 5 min")]
    [InlineData(-3, 0, 0, "the wall clock was set back by 3 h")]
    [InlineData(0, -5, 0, "the wall clock was set back by 5 min")]
    [InlineData(48, 0, 0, "the wall clock was set on by 2 days")]
    [InlineData(90 * 24, 0, 0, "the wall clock was set on by 90 days")]
    public void ATrustedClockThatIsSetIsToldOfOnce(int hours, int minutes, int seconds, string cause)
    {
        rig.Scan();
        rig.StepWall(Duration.FromHours(hours) + Duration.FromMinutes(minutes) + Duration.FromSeconds(seconds));
        rig.ScanFor(Duration.FromSeconds(1));
        var alarm = rig.Alarm(Key)!;
        Assert.Equal((AlarmState.Unacknowledged, AlarmPriority.Medium, cause), (alarm.State, alarm.Priority, alarm.Cause));
    }

    [Theory]
    [InlineData(299)]
    [InlineData(-299)]
    public void ACorrectionOfLessThanFiveMinutesIsNone(int seconds)
    {
        rig.Scan();
        rig.StepWall(Duration.FromSeconds(seconds));
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void WhatNetworkTimeSetsAfterABootIsNone()
    {
        rig.TrustWall(false);
        rig.Scan();
        rig.TrustWall(true);
        rig.StepWall(Duration.FromDays(90));
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void ItStandsUntilAcknowledgedAlsoThroughARestart()
    {
        rig.Scan();
        rig.StepWall(Duration.FromHours(2));
        rig.Scan();
        rig.Restart(Duration.FromSeconds(20));
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        rig.Ask(new Acknowledge("Ada", Key));
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void ItReturnsOnceTheClockIsSetBack()
    {
        rig.Scan();
        rig.StepWall(Duration.FromHours(2));
        rig.ScanFor(Duration.FromHours(1));
        rig.StepWall(-Duration.FromHours(2));
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }
}
