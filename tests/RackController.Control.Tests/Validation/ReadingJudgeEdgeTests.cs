using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Validation;

/// <summary>A judge at its edges: what it forgets, what it names on the agenda, and when it has settled.</summary>
public class ReadingJudgeEdgeTests
{
    private static readonly Duration clearAfter = Duration.FromSeconds(2);
    private static readonly Duration scan = Duration.FromMilliseconds(100);
    private readonly Agenda agenda = new();
    private MonotonicTime now = MonotonicTime.FromMilliseconds(1_000);

    [Theory]
    [InlineData(-20)]
    [InlineData(60)]
    public void TheEndsOfTheRangeArePlausible(double value)
    {
        var judge = Known(Temperature(), 21);
        Judge(judge, value);
        Assert.True(judge.IsKnown);
        Assert.Equal(value, judge.Value);
        Assert.True(judge.IsSettled);
    }

    [Fact]
    public void AFreshReadingNamesNoTimeAndAnOlderOneWhenItGrowsStale()
    {
        var judge = Known(Temperature(), 21);
        Judge(judge, 21);
        Assert.Equal(MonotonicTime.Never, agenda.Earliest);

        var taken = now;
        Judge(judge, 21, scan, taken);
        Assert.Equal(taken + Duration.FromSeconds(30), agenda.Earliest);
    }

    [Fact]
    public void AnErrorNamesNoTimeIsNotSettledAndSaysWhatItIs()
    {
        var judge = Known(Temperature(), 21);
        Corrupt(judge);
        Assert.Equal(MonotonicTime.Never, agenda.Earliest);
        Assert.False(judge.IsSettled);
        Assert.Equal("the sensor or its bus reports an error (on a board `doctor` says which)", judge.Refusal);

        judge.Judge(new Reading(21, ReadingQuality.Missing, now), now, agenda);
        Assert.Equal("no reading yet", judge.Refusal);
    }

    [Fact]
    public void WhoIsNotYetBelievedNamesWhenItWillBe()
    {
        var judge = new ReadingJudge(Temperature(), samplesToTrip: 2, clearAfter);
        Judge(judge, 21);
        Assert.False(judge.IsKnown);
        Assert.False(judge.IsSettled);
        Assert.Equal(now + clearAfter, agenda.Earliest);
    }

    [Fact]
    public void AContactThatMayTripAsksForTheNextScanAndIsNotSettledMeanwhile()
    {
        var judge = Known(Rope(), 0);
        Assert.True(judge.IsSettled);
        Judge(judge, 1);
        Assert.True(agenda.Earliest <= now);
        Assert.False(judge.IsSettled);

        Judge(judge, 1);
        Assert.Equal(1, judge.Value);
        Assert.True(judge.IsSettled);
        Assert.Equal(MonotonicTime.Never, agenda.Earliest);
    }

    [Fact]
    public void AContactThatMayClearNamesWhenAndIsNotSettledMeanwhile()
    {
        var judge = Wet();
        Judge(judge, 0);
        var dry = now;
        Assert.Equal(dry + clearAfter, agenda.Earliest);
        Assert.False(judge.IsSettled);

        Judge(judge, 0, clearAfter);
        Assert.Equal(0, judge.Value);
        Assert.True(judge.IsSettled);
    }

    [Fact]
    public void SamplesThatDoNotFollowEachOtherTripNothing()
    {
        var judge = Known(Rope(), 0);
        for (var time = 0; time < 5; time++)
        {
            Judge(judge, 1);
            Judge(judge, 0);
            Assert.Equal(0, judge.Value);
        }

        Judge(judge, 1);
        Corrupt(judge);
        Judge(judge, 1);
        Assert.False(judge.IsKnown);
    }

    [Fact]
    public void AContactThatNobodyCouldBelieveMustHoldItsHarmlessSideAnew()
    {
        var judge = Known(Rope(), 0);
        Corrupt(judge);
        Judge(judge, 0);
        Assert.False(judge.IsKnown);
        Judge(judge, 0, clearAfter);
        Assert.True(judge.IsKnown);
    }

    [Fact]
    public void AContactThatWasHarmfulIsSoAgainAfterItsSamplesWhenItWasUnknownBetween()
    {
        var judge = Wet();
        Corrupt(judge);
        Assert.False(judge.IsKnown);
        Judge(judge, 1);
        Assert.False(judge.IsKnown);
        Judge(judge, 1);
        Assert.True(judge.IsKnown);
        Assert.Equal(1, judge.Value);
    }

    [Fact]
    public void HalfIsClosed()
    {
        var judge = Known(Rope(), 0);
        Judge(judge, 0.5);
        Judge(judge, 0.5);
        Assert.Equal(1, judge.Value);
    }

    private ReadingJudge Wet()
    {
        var judge = Known(Rope(), 0);
        Judge(judge, 1);
        Judge(judge, 1);
        return judge;
    }

    private ReadingJudge Known(Sensor sensor, double value)
    {
        var judge = new ReadingJudge(sensor, samplesToTrip: 2, clearAfter);
        Judge(judge, value);
        Judge(judge, value, clearAfter);
        Assert.True(judge.IsKnown);
        return judge;
    }

    private void Judge(ReadingJudge judge, double value, Duration? after = null, MonotonicTime? takenAt = null)
    {
        now += after ?? scan;
        agenda.Begin(new Moment(now, default, true));
        judge.Judge(new Reading(value, ReadingQuality.Good, takenAt ?? now), now, agenda);
    }

    private void Corrupt(ReadingJudge judge)
    {
        now += scan;
        agenda.Begin(new Moment(now, default, true));
        judge.Judge(new Reading(21, ReadingQuality.Corrupt, now), now, agenda);
    }

    private static Sensor Temperature() => new()
    {
        Id = new SensorId(0),
        Name = "air",
        Kind = SensorKind.AirTemperature,
        PlausibleMin = -20,
        PlausibleMax = 60,
        StaleAfter = Duration.FromSeconds(30),
    };

    private static Sensor Rope() => Temperature() with { Kind = SensorKind.LeakRope, PlausibleMin = 0, PlausibleMax = 1 };
}
