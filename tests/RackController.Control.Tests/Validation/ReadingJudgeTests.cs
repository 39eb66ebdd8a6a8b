using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Validation;

public class ReadingJudgeTests
{
    private static readonly Duration clearAfter = Duration.FromSeconds(2);
    private readonly Agenda agenda = new();
    private MonotonicTime now = MonotonicTime.FromMilliseconds(1_000);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-20.1)]
    [InlineData(60.1)]
    public void AnImplausibleValueIsUnknownAtOnce(double value)
    {
        var judge = Known(Temperature(), 21);

        Judge(judge, value);

        Assert.False(judge.IsKnown);
        Assert.Equal("its reading is out of range", judge.Refusal);
    }

    [Fact]
    public void AReadingIsStaleJustAfterItsTimeAndNotBefore()
    {
        var judge = Known(Temperature(), 21);
        var taken = now;

        Judge(judge, 21, after: Duration.FromSeconds(30), taken);
        Assert.True(judge.IsKnown);
        Judge(judge, 21, after: Duration.FromMilliseconds(1), taken);
        Assert.False(judge.IsKnown);
    }

    [Fact]
    public void AReadingFromTheFutureIsNotBelieved()
    {
        var judge = Known(Temperature(), 21);

        Judge(judge, 21, Duration.FromMilliseconds(100), now + Duration.FromSeconds(5));

        Assert.False(judge.IsKnown);
    }

    [Fact]
    public void AReadingFromTheFutureIsDueWhenItsTimeComes()
    {
        var judge = Known(Temperature(), 21);
        var taken = now + Duration.FromSeconds(5);

        Judge(judge, 21, Duration.FromMilliseconds(100), taken);

        Assert.Equal(taken, agenda.Earliest);
    }

    [Fact]
    public void ACorruptReadingIsUnknownAndGoodOnesMustHoldBeforeTheyCount()
    {
        var judge = Known(Temperature(), 21);
        agenda.Begin(new Moment(now, default, true));
        judge.Judge(new Reading(21, ReadingQuality.Corrupt, now), now, agenda);
        Assert.False(judge.IsKnown);

        Judge(judge, 22);
        Judge(judge, 22, Duration.FromSeconds(1.9));
        Assert.False(judge.IsKnown);
        Judge(judge, 22);
        Assert.True(judge.IsKnown);
        Assert.Equal(22, judge.Value);
    }

    [Theory]
    [InlineData(SensorKind.ReservoirLowFloat, 0)]
    [InlineData(SensorKind.SupplySense, 0)]
    [InlineData(SensorKind.TrayHighFloat, 1)]
    [InlineData(SensorKind.LeakRope, 1)]
    public void AContactTripsFastAndClearsSlowly(SensorKind kind, double harmful)
    {
        var harmless = 1 - harmful;
        var judge = Known(Contact(kind), harmless);

        Judge(judge, harmful);
        Assert.Equal(harmless, judge.Value);
        Judge(judge, harmful);
        Assert.Equal(harmful, judge.Value);

        Judge(judge, harmless);
        Judge(judge, harmless, Duration.FromSeconds(1.9));
        Assert.Equal(harmful, judge.Value);
        Judge(judge, harmless);
        Assert.Equal(harmless, judge.Value);
    }

    [Fact]
    public void AChatteringContactStaysOnItsHarmfulValue()
    {
        var judge = Known(Contact(SensorKind.LeakRope), 0);
        Judge(judge, 1);
        Judge(judge, 1);
        for (var i = 0; i < 100; i++)
        {
            Judge(judge, i % 2, Duration.FromSeconds(1));
            Assert.Equal(1, judge.Value);
        }
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
        now += after ?? Duration.FromMilliseconds(100);
        agenda.Begin(new Moment(now, default, true));
        judge.Judge(new Reading(value, ReadingQuality.Good, takenAt ?? now), now, agenda);
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

    private static Sensor Contact(SensorKind kind) => Temperature() with
    {
        Kind = kind,
        PlausibleMin = 0,
        PlausibleMax = 1,
        StaleAfter = Duration.FromSeconds(2),
    };
}
