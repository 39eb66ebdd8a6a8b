using NodaTime;
using RackController.Bench.Tests.Support;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench.Tests.Statements;

public sealed class StatementTests
{
    private readonly FakeObserved now = new();
    private readonly RackId rack = new(0);

    [Fact]
    public void WhatALoadIsToldAndWhatItDrawsAreDifferentStatements()
    {
        now.Powered.Add(now.Pump);

        Assert.Equal(Truth.Yes, new LoadIsPowered(now.Pump, true).Judge(now));
        Assert.Equal(Truth.Yes, new LoadIsTold(now.Pump, SwitchState.Off).Judge(now));
        Assert.Equal("north/pump draws power and is told to be off", new LoadIsPowered(now.Pump, false).Seen(now));
    }

    [Fact]
    public void AFloodHasNoPhaseWhileTheControllerIsAway()
    {
        now.ControllerRuns = false;

        Assert.Equal(Truth.No, new FloodIs(rack, FloodPhase.Idle).Judge(now));
        Assert.Equal(Truth.Yes, new ControllerRuns(false).Judge(now));
    }

    [Fact]
    public void AnAlarmThatReturnedUnacknowledgedIsStillActive()
    {
        now.Alarms["north/low-float"] = AlarmState.ReturnedUnacknowledged;

        Assert.Equal(Truth.Yes, new AlarmIs("north/low-float", null).Judge(now));
        Assert.Equal(Truth.No, new AlarmIs("north/low-float", AlarmState.Unacknowledged).Judge(now));
        Assert.Equal("the alarm north/low-float is returned unacknowledged", new AlarmIs("north/low-float", null).Seen(now));
    }

    [Fact]
    public void AboveMeansMoreThanAndLeavesTheLimitItselfOut()
    {
        var above = new Measures(new TrayDepth(rack, 1), new Above(45));
        now.DepthMm = 45;
        Assert.Equal(Truth.No, above.Judge(now));
        now.DepthMm = 45.1;
        Assert.Equal(Truth.Yes, above.Judge(now));
        Assert.Equal("the water in the tray of north/tier 1 is 45.1 mm", above.Seen(now));
    }

    [Theory]
    [InlineData(1, Truth.No)]
    [InlineData(2, Truth.Yes)]
    [InlineData(4, Truth.Yes)]
    [InlineData(5, Truth.No)]
    public void FloodsOfADayAreJudgedWhenTheDayIsOver(int floods, Truth expected)
    {
        var statement = new Measures(new FloodsOfDay(rack), new Between(2, 4));
        Assert.Equal(Truth.NotNow, statement.Judge(now));

        now.DayClosed = new DayTotals(new LocalDate(2026, 3, 2), Duration.FromHours(24), [floods], []);
        Assert.Equal(expected, statement.Judge(now));
    }

    [Fact]
    public void TheDailyLightIntegralFollowsFromTheHoursThatTheTierWasReallyLit()
    {
        var lit = new Duration[now.Site.Loads.Length];
        lit[now.Site.Racks[0].Tier(1).Light!.Value.Index] = Duration.FromHours(16);
        now.DayClosed = new DayTotals(new LocalDate(2026, 3, 2), Duration.FromHours(24), [3], [.. lit]);

        // The tier's 180 umol/m2/s for 16 h: 180 x 57,600 / 1e6, arithmetic of the definition.
        Assert.Equal(10.368, new DailyLightIntegral(rack, 1).Value(now)!.Value, 6);
        Assert.Equal(16, new LitHoursOfDay(rack, 1).Value(now)!.Value, 6);
        Assert.Equal(0, new LitHoursOfDay(rack, 2).Value(now)!.Value, 6);
    }

    [Fact]
    public void AReportMatchesByTheWordsItBeginsWith()
    {
        now.Report("wall clock", "stepped back by 3 h");

        Assert.Equal(Truth.Yes, new Reports("wall clock", "stepped back").Judge(now));
        Assert.Equal(Truth.No, new Reports("wall clock", "stepped").Judge(now.After(1)));
        now.Report("wall clock", "steppedback");
        Assert.Equal(Truth.No, new Reports("wall clock", "stepped").Judge(now));
    }

    [Fact]
    public void AStatementAboutALoadIsExplainedByItsOwnEventsAndItsRacksButNotByOtherLoads()
    {
        var statement = new LoadIsPowered(now.Pump, true);

        Assert.True(statement.Concerns(now.Site, "north/pump"));
        Assert.True(statement.Concerns(now.Site, "north/low-float"));
        Assert.True(statement.Concerns(now.Site, "sockets/supply-lost"));
        Assert.False(statement.Concerns(now.Site, "north/fan"));
        Assert.False(statement.Concerns(now.Site, "south/low-float"));
    }
}
