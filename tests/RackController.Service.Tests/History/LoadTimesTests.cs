using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class LoadTimesTests
{
    private static readonly Instant noon = Happenings.Noon;
    private static readonly HistorySpan hour = new(noon, noon + Duration.FromHours(1));
    private static readonly Load pump = Sites.OneRack().Loads.First(load => load.Kind == LoadKind.Pump);
    private static readonly Load fan = pump with { Name = "north/fan", Kind = LoadKind.Fan, SafeState = SwitchState.On };

    [Fact]
    public void ALoadIsOnFromItsOnToItsOff() =>
        Assert.Equal([(10.0, 20.0), (50, 60)], Times(pump, On(1, 10), Off(1, 20), On(1, 50)));

    [Fact]
    public void WhatWasSwitchedOnBeforeTheSpanIsOnFromItsBeginning() =>
        Assert.Equal([(0.0, 5.0)], Times(pump, On(1, -30), Off(1, 5)));

    [Fact]
    public void WhatIsSwitchedAfterTheSpanTellsNothingOfIt() => Assert.Empty(Times(pump, On(1, 70), Off(1, 80)));

    [Fact]
    public void BetweenTwoRunsALoadHasItsSafeState()
    {
        Assert.Equal([(10.0, 20.0), (40, 45)], Times(pump, On(1, 10), Other(1, 20), Other(2, 30), On(2, 40), Off(2, 45)));
        Assert.Equal([(0.0, 10.0), (20, 40)], Times(fan, Off(1, 10), Other(1, 20), Other(2, 30), Off(2, 40)));
    }

    [Fact]
    public void WhatWasNeverSwitchedIsAsAStartFindsIt()
    {
        Assert.Equal([(0.0, 60.0)], Times(fan));
        Assert.Empty(Times(pump));
    }

    [Fact]
    public void OfTheTimeBeforeTheRecordBeginsNothingIsTold()
    {
        var begins = noon + Duration.FromMinutes(45);

        Assert.Equal(begins, Assert.Single(Assert.Single(LoadTimes.Of([], [fan], hour, begins)).On).From);
        Assert.Equal(hour.From, Assert.Single(Assert.Single(LoadTimes.Of([], [fan], hour, noon - Duration.FromDays(1))).On).From);
    }

    [Fact]
    public void ALoadThatChattersIsNoMoreStretchesThanAScreenShows()
    {
        var chatter = Enumerable.Range(0, 7200).Select(half => half % 2 == 0 ? On(1, half / 120.0) : Off(1, half / 120.0)).ToArray();

        Assert.InRange(Times(pump, chatter).Count(), 1, SensorTrend.MostPoints);
    }

    private static IEnumerable<(double From, double Until)> Times(Load load, params KeptEvent[] oldestFirst)
    {
        var its = oldestFirst.Select(
            kept => kept.Event.Subject == "it" ? kept with { Event = kept.Event with { Subject = load.Name } } : kept);
        return Assert.Single(LoadTimes.Of(its.Reverse(), [load], hour)).On
            .Select(on => ((on.From - noon).TotalMinutes, (on.Until - noon).TotalMinutes));
    }

    private static KeptEvent On(long run, double minute) => Kept(run, minute, "it", "on");

    private static KeptEvent Off(long run, double minute) => Kept(run, minute, "it", "off");

    private static KeptEvent Other(long run, double minute) => Kept(run, minute, "north/another", "on");

    private static KeptEvent Kept(long run, double minute, string subject, string what) => new(
        0, run, MadeUpJournal.Event(noon + Duration.FromMinutes(minute), EventKind.Load, subject, what));
}
