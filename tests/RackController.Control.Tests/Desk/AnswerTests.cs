using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Desk;

/// <summary>What becomes of each request, at its edges.</summary>
public class AnswerTests
{
    private const string HighWater = "north/high-water";
    private static readonly RackId north = new(0);
    private readonly Rig rig = new(Sites.OneRack());

    [Fact]
    public void AResetMayBeConfirmedUpToItsTimeAndNotAfter()
    {
        LatchAndDry();
        Ask(new ResetLatch("Ada", HighWater));
        rig.ScanFor(Duration.FromSeconds(60));
        Assert.Equal("confirm reset: ask for the reset first, then confirm it", Ask(new ConfirmReset("Ben", HighWater)));

        Assert.Equal("reset: confirm within 1 min", Ask(new ResetLatch("Ada", HighWater)));
        rig.ScanFor(Duration.FromSeconds(59.9));
        Assert.Equal("confirm reset: the latch is released", Ask(new ConfirmReset("Ben", HighWater)));
    }

    [Fact]
    public void AConfirmationIsForTheLatchThatWasAskedForLastAndForOnce()
    {
        LatchAndDry();
        Ask(new ResetLatch("Ada", HighWater));
        Assert.Equal("confirm reset: ask for the reset first, then confirm it", Ask(new ConfirmReset("Ben", "north/low-float")));

        Ask(new ResetLatch("Ada", "north/low-float"));
        Assert.Equal("confirm reset: ask for the reset first, then confirm it", Ask(new ConfirmReset("Ben", HighWater)));

        Ask(new ResetLatch("Ada", HighWater));
        Ask(new ConfirmReset("Ben", HighWater));
        Assert.Equal("confirm reset: ask for the reset first, then confirm it", Ask(new ConfirmReset("Ben", HighWater)));
    }

    [Fact]
    public void OfALatchWhoseCauseIsThereItIsSaidWhy()
    {
        LatchAndDry();
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        Ask(new ResetLatch("Ada", HighWater));
        Assert.Equal(
            "confirm reset: the latch stays, because north/leak rope was wet; somebody must look and reset",
            Ask(new ConfirmReset("Ben", HighWater)));
    }

    [Theory]
    [InlineData(30, "service hold for 30 min")]
    [InlineData(31, "service hold for 30 min, the longest that this rack allows")]
    public void AHoldIsSaidToBeCutWhereItWas(int minutes, string answer) =>
        Assert.Equal(answer, Ask(new HoldForService("Ada", north, Duration.FromMinutes(minutes))));

    [Fact]
    public void AHoldOfLessThanNothingIsOver()
    {
        Assert.Equal("service hold for 0 s", Ask(new HoldForService("Ada", north, Duration.FromMinutes(-5))));
        rig.Scan();
        Assert.DoesNotContain(rig.Why("north/pump").Interlocks, words => words.StartsWith("service-hold:", StringComparison.Ordinal));
        Assert.Equal("there was no service hold", Ask(new EndServiceHold("Ada", north)));
    }

    [Fact]
    public void AHoldEndsToTheScan()
    {
        Ask(new HoldForService("Ada", north, Duration.FromMinutes(5)));
        var began = rig.Now.Monotonic;
        rig.LeapUntil(() => !rig.Why("north/pump").Interlocks.Any(words => words.StartsWith("service-hold:", StringComparison.Ordinal)));
        Assert.Equal(Duration.FromMinutes(5), rig.Now.Monotonic - began);
    }

    [Fact]
    public void ToResumeWhatNobodyStoppedKeepsNoPumpWaiting()
    {
        Assert.Equal("resumed: the schedule is followed again", Ask(new Resume("Ada", null)));
        Assert.DoesNotContain(rig.Why("north/pump").Interlocks, words => words.StartsWith("service-hold:", StringComparison.Ordinal));
        Assert.Equal("there was no service hold", Ask(new EndServiceHold("Ada", north)));
        Assert.DoesNotContain(rig.Why("north/pump").Interlocks, words => words.StartsWith("service-hold:", StringComparison.Ordinal));
    }

    [Fact]
    public void AStopAndAResumeOfOneRackConcernItAlone()
    {
        var two = new Rig(Sites.ManyRacks(2, racksToACircuit: 2));
        two.ScanFor(Duration.FromSeconds(10));
        two.Scan(new Stop("Ada", null));
        two.Scan(new Resume("Ada", new RackId(1)));
        two.LeapFor(Duration.FromSeconds(20));
        Assert.False(two.IsOn("rack 1/tier 1 light"));
        Assert.True(two.IsOn("rack 2/tier 1 light"));
        Assert.Equal(
            ["test cellar", "rack 2"], two.Events.Where(each => each.Kind == EventKind.Request).Select(each => each.Subject));
    }

    [Fact]
    public void WhoeverResumesOneRackKeepsOnlyItsPumpWaiting()
    {
        var two = new Rig(Sites.ManyRacks(2, racksToACircuit: 2));
        two.ScanFor(Duration.FromSeconds(10));
        two.Scan(new Stop("Ada", null));
        two.Scan(new Resume("Ada", new RackId(1)));
        Assert.DoesNotContain(two.Why("rack 1/pump").Interlocks, words => words.StartsWith("service-hold:", StringComparison.Ordinal));
        Assert.Contains(two.Why("rack 2/pump").Interlocks, words => words.StartsWith("service-hold:", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatBecomesOfALeftOutFloodIsSaid() => Assert.Equal(
        "skip the next flood: the flood at 13:00 will be left out", Ask(new SkipNextFlood("Ada", north)));

    [Fact]
    public void ARestartForgetsNoStop()
    {
        rig.ScanFor(Duration.FromSeconds(10));
        Ask(new Stop("Ada", null));
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.False(rig.IsOn("north/tier 1 light"));
        Assert.True(rig.IsOn("north/fan"));

        Ask(new Resume("Ada", null));
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.True(rig.IsOn("north/tier 1 light"));
    }

    private void LatchAndDry()
    {
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Set("north/leak rope", 0);
        rig.ScanFor(Duration.FromSeconds(5));
    }

    private string Ask(OperatorRequest request)
    {
        rig.Scan(request);
        return rig.Events.Last(each => each.Kind == EventKind.Request).What;
    }
}
