using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Replaying;

public class RunReplayTests
{
    private static readonly Duration day = Duration.FromDays(1);

    [Fact]
    public void WhatWasDecidedIsDecidedAgain()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(day);

        var replayed = RunReplay.Of(days.Site, days.Run);

        Assert.Equal(0, replayed.DifferenceCount);
        Assert.Empty(replayed.Gaps);
        Assert.True(replayed.Commands > 0);
        Assert.Equal(days.Commands, replayed.Commands);
        var span = replayed.Until!.Value.Monotonic - replayed.From!.Value.Monotonic;
        Assert.InRange(span, day - ScanRecorder.SampleEvery, day);
    }

    [Fact]
    public void AControllerThatDecidesDifferentlyIsFoundWithTheMomentTheLoadAndTheReason()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(Duration.FromHours(1), new FloodNow("Ada", new RackId(0)));

        var impatient = days.Site.WithLimits(limits => limits with { PumpMaximumRun = Duration.FromSeconds(30) });
        var replayed = RunReplay.Of(impatient, days.Run);

        var first = replayed.Differences.First(difference => difference.Subject == "north/pump");
        Assert.Equal(("on", "off"), (first.Recorded, first.Replayed));
        Assert.Contains(first.Why, step => step.Contains("pump-maximum-run", StringComparison.Ordinal));
        // A pump rests a quarter of an hour after a start, whatever was before.
        Assert.InRange(first.At.Monotonic - replayed.From!.Value.Monotonic, Duration.FromSeconds(930), Duration.FromSeconds(933));
    }

    [Fact]
    public void AnEventThatDoesNotComeAgainIsFoundAlthoughNoCommandDiffers()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(Duration.FromMinutes(10));
        days.Live(Duration.FromMinutes(10), new SkipNextFlood("Ada", new RackId(0)));
        var renamed = days.Run with
        {
            Facts = days.Run.Facts! with { Names = PartNames.Of(days.Site) with { Racks = ["another"] } },
        };

        var replayed = RunReplay.Of(days.Site, renamed);

        Assert.Contains(replayed.Differences, difference => difference is { Subject: "events", Replayed: "nothing happened" });
    }

    [Fact]
    public void ARecordWhoseBeginningIsGoneIsTakenUpFromWhatWasRememberedAndHeldToItOnceThatIsTheSame()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(day * 4);
        Assert.True(days.Read.Count(page => page.Kind == PageKind.Checkpoint) >= 2);
        days.Pages.RemoveRange(0, 30);

        var replayed = RunReplay.Of(days.Site, days.Run);

        Assert.Equal("its beginning is no longer there", Assert.Single(replayed.Gaps));
        Assert.True(replayed.Settling > Duration.FromHours(20), $"{replayed.Settling}");
        Assert.True(replayed.SameMemories > 0);
        Assert.True(replayed.Commands > 0);
        Assert.Equal(0, replayed.DifferenceCount);
    }

    [Fact]
    public void ALostPageIsSaidAndReplayingBeginsAgainWhereItCan()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(day * 4);
        days.Pages.RemoveAt(40);

        var replayed = RunReplay.Of(days.Site, days.Run);

        Assert.StartsWith("a part is missing after 2026-05-31 20:", Assert.Single(replayed.Gaps), StringComparison.Ordinal);
        Assert.True(replayed.Settling > Duration.Zero);
        Assert.Equal(0, replayed.DifferenceCount);
    }

    [Fact]
    public void APageThatIsNoneIsSaidAndLeftOut()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(day * 2);
        days.Pages[40] = [1, 2, 3];

        var replayed = RunReplay.Of(days.Site, days.Run);

        Assert.StartsWith("a page cannot be read", replayed.Gaps[0], StringComparison.Ordinal);
        Assert.Equal(0, replayed.DifferenceCount);
    }

    [Fact]
    public void ARecordThatFoundNoRoomGoesOnFromWhatWasRemembered()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(Duration.FromHours(2));
        days.IsFull = true;
        days.Live(Duration.FromHours(2));
        days.IsFull = false;
        days.Live(day * 3);

        var replayed = RunReplay.Of(days.Site, days.Run);

        Assert.StartsWith("a part could not be written after", Assert.Single(replayed.Gaps), StringComparison.Ordinal);
        Assert.True(replayed.SameMemories > 0);
        Assert.Equal(0, replayed.DifferenceCount);
    }

    [Fact]
    public void WhatIsNotInTheFileAnyMoreIsLeftOut()
    {
        var days = new RecordedDays(Sites.OneRack());
        days.Live(Duration.FromHours(1));
        var run = days.Run with { Facts = days.Run.Facts! with { Names = new PartNames([], [], []) } };

        Assert.Equal(0, RunReplay.Of(days.Site, run).Differences.Count(difference => difference.Subject == "north/pump"));
    }
}
