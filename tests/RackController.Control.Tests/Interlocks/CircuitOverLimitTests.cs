using RackController.Model;

using NodaTime;
using RackController.Control.Tests.Currents;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row circuit-over-limit, on a circuit that may carry 2 A; its fan, aerator and two lights draw 1.5 A by their
/// nameplates.</summary>
public class CircuitOverLimitTests
{
    private const string Key = "sockets/circuit-over-limit";
    private const string LastLight = "north/tier 2 light";

    [Fact]
    public void WhatACircuitIsMeasuredToCarryTooMuchIsShedByPriority()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.ScanFor(Duration.FromSeconds(9.9));
        Assert.True(circuit.Rig.IsOn(LastLight));

        circuit.Rig.ScanFor(Duration.FromSeconds(0.4));
        Assert.False(circuit.Rig.IsOn(LastLight));
        Assert.True(circuit.Rig.IsOn("north/tier 1 light"));
        Assert.True(circuit.Rig.IsOn("north/aerator"));
        Assert.Equal(AlarmPriority.High, circuit.Rig.Alarm(Key)!.Priority);
        Assert.Equal("sockets carries 1.4 times what its loads should draw, and may carry 2 A", circuit.Rig.Alarm(Key)!.Cause);
    }

    [Fact]
    public void ACircuitAtItsLimitKeepsItsLights()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.OtherA = 2 - circuit.CurrentA);

        // The flood of 07:00 would be too much.
        circuit.Rig.LeapFor(Duration.FromMinutes(29));
        Assert.True(circuit.Rig.IsOn(LastLight));
    }

    [Fact]
    public void AStartThatIsOverInTimeShedsNothing()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.OtherA = 10);
        circuit.Rig.ScanFor(Duration.FromSeconds(9));
        circuit.Now(() => circuit.OtherA = 0);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.True(circuit.Rig.IsOn(LastLight));
        Assert.Null(circuit.Rig.Alarm(Key));
    }

    [Fact]
    public void WhatWasShedComesBackOnceItFitsWithAMargin()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        Assert.False(circuit.Rig.IsOn(LastLight));

        circuit.Now(() => circuit.Supply = 1);
        circuit.Rig.LeapFor(Duration.FromMinutes(11));
        Assert.True(circuit.Rig.IsOn(LastLight));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, circuit.Rig.Alarm(Key)!.State);
    }

    [Fact]
    public void TheThirdTimeInADayLatchesUntilSomebodyResets()
    {
        var circuit = Lit();
        Peak(circuit, times: 3);
        circuit.Rig.LeapFor(Duration.FromHours(2));
        Assert.False(circuit.Rig.IsOn(LastLight));
        Assert.Equal("sockets carried more than its 2 A 3 times within 24 h", circuit.Rig.Alarm(Key)!.Cause);
        circuit.Rig.Scan(new ResetLatch("Ada", Key));
        circuit.Rig.Scan(new ConfirmReset("Ben", Key));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(circuit.Rig.IsOn(LastLight));
        Peak(circuit, times: 1);
        Assert.True(circuit.Rig.IsOn(LastLight));
    }

    [Fact]
    public void TimesAndLatchAreRememberedAcrossARestart()
    {
        var circuit = Lit();
        Peak(circuit, times: 2);
        circuit.Rig.Restart(Duration.FromMinutes(1));
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        Assert.True(circuit.Rig.IsOn(LastLight));
        Peak(circuit, times: 1);
        Assert.False(circuit.Rig.IsOn(LastLight));
        circuit.Rig.Restart(Duration.FromMinutes(1));
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        Assert.Equal("sockets carried more than its 2 A 3 times within 24 h", circuit.Rig.Alarm(Key)!.Cause);
        Assert.False(circuit.Rig.IsOn(LastLight));
    }

    [Fact]
    public void ALatchIsNotResetWhileTheCircuitStillCarriesTooMuch()
    {
        var circuit = Lit();
        Peak(circuit, times: 2);
        circuit.Now(() => circuit.OtherA = 5);
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        circuit.Rig.Scan(new ResetLatch("Ada", Key));
        circuit.Rig.Scan(new ConfirmReset("Ben", Key));
        Assert.StartsWith(
            "confirm reset: the latch stays", circuit.Rig.Events.Last(each => each.Kind == EventKind.Request).What,
            StringComparison.Ordinal);
    }

    [Fact]
    public void ALatchIsResetWhileNobodyKnowsWhatTheCircuitCarries()
    {
        var circuit = Lit();
        Peak(circuit, times: 3);
        circuit.Rig.Silence("sockets/current");
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Rig.Scan(new ResetLatch("Ada", Key));
        circuit.Rig.Scan(new ConfirmReset("Ben", Key));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(circuit.Rig.IsOn(LastLight));
    }

    [Fact]
    public void WhatWasShedIsLookedAtAgainTenMinutesLater()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.LeapUntil(() => circuit.Rig.Alarm(Key) is not null);
        var shed = circuit.Rig.Now.Monotonic;
        circuit.Now(() => circuit.Supply = 1);
        circuit.Rig.LeapUntil(() => circuit.Rig.Alarm(Key)!.State == AlarmState.ReturnedUnacknowledged);
        Assert.Equal(Duration.FromMinutes(10), circuit.Rig.Now.Monotonic - shed);
    }

    /// <summary>The supply is gone for a moment, so that at the time of the look everything is off, or the aerator alone is back.</summary>
    [Theory]
    [InlineData(4)]
    [InlineData(64)]
    public void WhatWasShedStaysOffWhereADarkMomentFallsOnTheLook(int secondsBefore)
    {
        const string sense = "sockets/supply sense";
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.LeapUntil(() => circuit.Rig.Alarm(Key) is not null);
        circuit.Rig.LeapFor(Duration.FromMinutes(10) - Duration.FromSeconds(secondsBefore));
        circuit.Draws("north/aerator", 1 / 1.4);
        circuit.Rig.Set(sense, 0);
        circuit.Rig.LeapFor(Duration.FromSeconds(1));
        circuit.Rig.Set(sense, 1);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.True(circuit.Rig.IsOn("north/tier 1 light"));
        Assert.False(circuit.Rig.IsOn(LastLight));
        Assert.DoesNotContain(circuit.Rig.Events, each => each is { Subject: Key, What: "returned" });
        Assert.Single(circuit.Rig.Events, each => each is { Subject: LastLight, What: "off" });
    }

    [Fact]
    public void ARestartKeepsShedding()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        circuit.Rig.Restart(Duration.FromSeconds(10));
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        Assert.True(circuit.Rig.IsOn("north/tier 1 light"));
        Assert.False(circuit.Rig.IsOn(LastLight));
    }

    [Fact]
    public void AfterARestartItLooksAgainInItsTime()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        circuit.Rig.Restart(Duration.FromSeconds(10));
        circuit.Now(() => circuit.Supply = 1);
        circuit.Rig.LeapFor(Duration.FromMinutes(9.9));
        Assert.False(circuit.Rig.IsOn(LastLight));
        circuit.Rig.LeapFor(Duration.FromSeconds(10));
        Assert.True(circuit.Rig.IsOn(LastLight));
    }

    /// <summary>Fan, aerator and one light draw 0.81 A by their nameplates (arithmetic).</summary>
    [Fact]
    public void WhatIsStillTooMuchIsShedFurtherAndIsTheSameTimeStill()
    {
        var circuit = Lit();
        foreach (var supply in new[] { 1.4, 2.6, 4.1 })
        {
            circuit.Now(() => circuit.Supply = supply);
            circuit.Rig.LeapFor(Duration.FromSeconds(30));
        }

        Assert.False(circuit.Rig.IsOn("north/tier 1 light"));
        Assert.DoesNotContain(circuit.Rig.Events, each => each is { Subject: Key, What: "latched" });
        Assert.StartsWith("sockets carries 2.6 times", circuit.Rig.Alarm(Key)!.Cause, StringComparison.Ordinal);
    }

    /// <summary>1.2 times as much and a margin of a twentieth are 1.26, in tenths 1.3 (arithmetic).</summary>
    [Fact]
    public void WhatDrawsLessThanBeforeIsTakenForThatAndAMargin()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.6);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.StartsWith("sockets carries 1.6 times", circuit.Rig.Alarm(Key)!.Cause, StringComparison.Ordinal);
        circuit.Now(() => circuit.Supply = 1.2);
        circuit.Rig.LeapFor(Duration.FromMinutes(11));
        Assert.StartsWith("sockets carries 1.3 times", circuit.Rig.Alarm(Key)!.Cause, StringComparison.Ordinal);
        Assert.True(circuit.Rig.IsOn(LastLight));
    }

    [Fact]
    public void ALittleMoreThanTheNameplatesIsNone()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Now(() => circuit.Supply = 1.019);
        circuit.Rig.LeapFor(Duration.FromMinutes(11));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, circuit.Rig.Alarm(Key)!.State);
    }

    [Theory]
    [InlineData(3, "1.1 times")]
    [InlineData(100, "1.1 times")]
    public void WhatFlowsWhileEverythingIsToldOffIsToldAllTheSame(double otherA, string words)
    {
        var circuit = Lit();
        circuit.Rig.Set("sockets/supply sense", 0);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Now(() => circuit.OtherA = otherA);
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        Assert.Contains(words, circuit.Rig.Alarm(Key)!.Cause, StringComparison.Ordinal);
    }

    [Fact]
    public void MoreThanASeizedMotorDrawsIsNotTakenForMore()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.OtherA = 100);
        circuit.Rig.LeapFor(Duration.FromSeconds(15));
        Assert.Contains("10.0 times", circuit.Rig.Alarm(Key)!.Cause, StringComparison.Ordinal);
    }

    [Fact]
    public void ASilenceBetweenTwoPeaksMakesThemTwo()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.LeapFor(Duration.FromSeconds(8));
        circuit.Now(() => circuit.Supply = 1);
        circuit.Rig.Silence("sockets/current");
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        circuit.Rig.Speak("sockets/current");
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.LeapFor(Duration.FromSeconds(8));
        Assert.True(circuit.Rig.IsOn(LastLight));
        Assert.Null(circuit.Rig.Alarm(Key));
    }

    [Fact]
    public void WhileTheSensorIsSilentTheLastAnswerStands()
    {
        var circuit = Lit();
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        circuit.Rig.Silence("sockets/current");
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.False(circuit.Rig.IsOn(LastLight));
        Assert.Equal(AlarmState.Unacknowledged, circuit.Rig.Alarm(Key)!.State);
    }

    private static void Peak(LiveCircuit circuit, int times)
    {
        for (var time = 0; time < times; time++)
        {
            circuit.Now(() => circuit.Supply = 1.4);
            circuit.Rig.LeapFor(Duration.FromMinutes(5));
            circuit.Now(() => circuit.Supply = 1);
            circuit.Rig.LeapFor(Duration.FromMinutes(15));
        }
    }

    private static LiveCircuit Lit()
    {
        var circuit = new LiveCircuit(site => site with { Circuits = [site.Circuits[0] with { ContinuousLimitA = 2 }] });
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(LastLight) && circuit.Rig.IsOn("north/tier 1 light"));
        circuit.Rig.LeapFor(Duration.FromMinutes(30));
        return circuit;
    }
}
