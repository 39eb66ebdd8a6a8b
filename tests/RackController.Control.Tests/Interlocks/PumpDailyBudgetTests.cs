using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row pump-daily-budget.</summary>
public class PumpDailyBudgetTests
{
    private const string Key = "north/pump-daily-budget";

    [Fact]
    public void OnceTheBudgetIsUsedThePumpStaysOffUntilTheDayEnds()
    {
        var rig = HourlyRig();
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        var firstRun = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        Assert.Equal(Duration.FromMinutes(25), PumpTime(rig));
        rig.LeapUntil(() => rig.IsOn("north/pump"));

        Assert.True(rig.Now.Monotonic - firstRun >= Duration.FromHours(24));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void TheDayEndsAtTheScan24HoursAfterItsFirstRunBegan()
    {
        var rig = HourlyRig();
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        var firstRun = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        rig.LeapUntil(() => rig.Alarm(Key)!.State == AlarmState.ReturnedUnacknowledged);

        Assert.Equal(firstRun + Duration.FromHours(24), rig.Now.Monotonic);
    }

    [Fact]
    public void AcknowledgingGrantsTheBudgetOnceMore()
    {
        var rig = HourlyRig();
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        var used = rig.Now.Monotonic;
        rig.Scan(new Acknowledge("Ada", Key));

        rig.LeapUntil(() => rig.IsOn("north/pump"));

        Assert.True(rig.Now.Monotonic - used < Duration.FromHours(2));
    }

    [Fact]
    public void NeitherARestartNorAClockStepBeginsANewDay()
    {
        var rig = HourlyRig();
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        rig.Restart(Duration.FromMinutes(1));
        rig.StepWall(Duration.FromDays(1));
        rig.LeapFor(Duration.FromHours(10));

        Assert.False(rig.IsOn("north/pump"));
        Assert.Contains("has used its 25 min for the day", rig.Why("north/pump").Interlocks[0]);
    }

    [Fact]
    public void ARestartNeitherLengthensNorShortensTheDay()
    {
        var rig = HourlyRig();
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        var firstRun = rig.Now.Wall;
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        rig.Restart(Duration.FromHours(2));
        rig.LeapUntil(() => rig.Alarm(Key)!.State == AlarmState.ReturnedUnacknowledged);
        Assert.Equal(firstRun + Duration.FromHours(24), rig.Now.Wall);
    }

    [Fact]
    public void APowerCutWhileThePumpStandsAddsNothingToWhatItHasUsed()
    {
        var rig = HourlyRig();
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromMinutes(30));
        rig.Restart(Duration.FromMinutes(5));
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        Assert.Equal(Duration.FromMinutes(25), PumpTime(rig));
    }

    [Fact]
    public void ThatADayIsOverIsSavedAtOnce()
    {
        var rig = HourlyRig();
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        var firstRun = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        rig.LeapFor(firstRun + Duration.FromHours(24) - rig.Now.Monotonic + Duration.FromMilliseconds(-100));
        var version = rig.Control.MemoryVersion;
        rig.Scan();
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);

        // It and its alarm.
        Assert.Equal(2, rig.Control.MemoryVersion - version);
    }

    [Fact]
    public void AcknowledgingYesterdaysAlarmGrantsNothing()
    {
        var rig = HourlyRig();
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        rig.LeapUntil(() => rig.Alarm(Key)!.State == AlarmState.ReturnedUnacknowledged);
        var newDay = rig.Now.Monotonic;
        rig.LeapUntil(() => PumpTime(rig) >= Duration.FromMinutes(40));

        rig.Scan(new Acknowledge("Ada", Key));
        rig.LeapUntil(() => rig.Alarm(Key) is not null);

        Assert.Equal(Duration.FromMinutes(50), PumpTime(rig));
        Assert.True(rig.Now.Monotonic - newDay < Duration.FromHours(24));
    }

    private static Duration PumpTime(Rig rig)
    {
        var total = Duration.Zero;
        var on = MonotonicTime.Never;
        foreach (var happened in rig.Events.Where(e => e.Subject == "north/pump"))
        {
            total += happened.What == "off" ? happened.At.Monotonic - on : Duration.Zero;
            on = happened.What == "on" ? happened.At.Monotonic : on;
        }

        return total;
    }

    private static Rig HourlyRig() => new(Sites.OneRack()
        .WithLimits(limits => limits with { PumpDailyBudget = Duration.FromMinutes(25) })
        .WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with
            {
                Times = new FloodsEvery(Duration.FromHours(1), LocalTime.Midnight, Duration.FromHours(24)),
            },
        }));
}
