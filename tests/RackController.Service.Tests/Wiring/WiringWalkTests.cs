using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public class WiringWalkTests
{
    private readonly Site site = Sites.OneRack().WithContactor();
    private readonly WiringWalk walk;
    private readonly Readings readings;
    private readonly RelayCommands commands;
    private int tenths;

    public WiringWalkTests()
    {
        walk = new WiringWalk(site);
        readings = new Readings(site);
        commands = new RelayCommands(site);
        Say("north/reservoir low float", 1);
        Say("sockets/supply sense", 1);
    }

    [Fact]
    public void NothingMovesUntilSomebodySaysGo()
    {
        GoTo("north/fan");
        Pass(600);
        Assert.Empty(Moved());
    }

    [Fact]
    public void AfterTheCountDownOneLoadMovesAloneForFiveSeconds()
    {
        GoTo("north/tier 2 light");
        Press('G');
        Pass(29);
        Assert.Empty(Moved());
        Pass(1);
        Assert.Equal(["north/tier 2 light"], Moved());
        Pass(49);
        Assert.Equal(["north/tier 2 light"], Moved());
        Pass(1);
        Assert.Empty(Moved());
        Assert.Equal("Did north/tier 2 light, and nothing else, go on and off?", Page.Words);
        Assert.Equal(WiringOutcome.Right, Press('Y')!.Outcome);
    }

    [Fact]
    public void AnyKeyStopsALoadAtOnce()
    {
        GoTo("north/tier 1 light");
        Press('G');
        Pass(40);
        Press('?');
        Assert.Empty(Moved());
        Assert.Equal("stopped by a key", Page.Note);
    }

    [Fact]
    public void WaterWhereNoneBelongsStopsALoadAndKeepsItOff()
    {
        GoTo("north/tier 1 light");
        Press('G');
        Pass(40);
        Say("north/leak rope", 1);
        Pass(1);
        Assert.Empty(Moved());
        Press('G');
        Assert.Equal("north/leak rope is wet: find out why, dry it, and go on", Page.Note);
    }

    [Fact]
    public void APumpWhoseLowFloatNobodyTriedStaysOff()
    {
        GoTo("north/pump");
        Press('G');
        Pass(60);
        Assert.Empty(Moved());
        Assert.Contains("was not tried", Page.Note);
    }

    [Fact]
    public void APumpRunsOnceItsLowFloatWasTriedAndNeverDry()
    {
        TryLowFloat();
        GoTo("north/pump");
        Press('G');
        Pass(35);
        Assert.Equal(["north/pump"], Moved());
        Say("north/reservoir low float", 0);
        Pass(1);
        Assert.Empty(Moved());
        Assert.Contains("tells of no water", Page.Note);
        Press('G');
        Pass(60);
        Assert.Empty(Moved());
    }

    [Fact]
    public void APumpWhoseLowFloatIsSilentStops()
    {
        TryLowFloat();
        GoTo("north/pump");
        Press('G');
        Pass(35);
        readings[site.SensorNamed("north/reservoir low float")] = new Reading(1, ReadingQuality.Corrupt, Now);
        Pass(1, spoken: false);
        Assert.Empty(Moved());
    }

    [Fact]
    public void APumpRunsHalfAMinuteInOneWalkAndNoMore()
    {
        TryLowFloat();
        GoTo("north/pump");
        for (var times = 0; times < 6; times++)
        {
            Press('G');
            Pass(31);
            Assert.Equal(["north/pump"], Moved());
            Pass(50);
        }

        Press('G');
        Pass(31);
        Assert.Empty(Moved());
        Assert.StartsWith("it has run as long as one walk allows", Page.Note);
    }

    [Fact]
    public void AContactIsAskedAboutOnceItTurnedBothWays()
    {
        GoTo("north/leak rope");
        Assert.DoesNotContain(Page.Keys, key => key.Key == 'Y');
        Say("north/leak rope", 1);
        Pass(1);
        Assert.DoesNotContain(Page.Keys, key => key.Key == 'Y');
        Say("north/leak rope", 0);
        Pass(1);
        Assert.Equal(WiringOutcome.Right, Press('Y')!.Outcome);
    }

    [Fact]
    public void AContactThatDoesNotTurnIsWrong()
    {
        GoTo("north/leak rope");
        var result = Press('N')!;
        Assert.Equal(WiringOutcome.Wrong, result.Outcome);
        Assert.StartsWith("it did not turn both ways", result.Text);
    }

    [Fact]
    public void AContactorCutsItsCircuitAlone()
    {
        GoTo("contactor of sockets");
        Press('G');
        Pass(31);
        walk.Tell(commands);
        Assert.True(commands.IsCut(new CircuitId(0)));
        Assert.Empty(Moved());
        Pass(50);
        walk.Tell(commands);
        Assert.False(commands.IsCut(new CircuitId(0)));
    }

    // Aerator and fans keep their power meanwhile, so the pump's plug alone is not enough (the project's wiring notes, "Read this first").
    [Theory]
    [InlineData("north/reservoir low float")]
    [InlineData("north/leak rope")]
    public void EveryPlugIsPulledBeforeAFloatOrRopeIsTouched(string contact)
    {
        GoTo(contact);
        Assert.StartsWith("With every load's plug pulled, ", Page.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void ALoadThatIsSafeWhenOnGoesOff()
    {
        GoTo("north/aerator");
        Press('G');
        Pass(31);
        Assert.Equal(["north/aerator"], Moved());
        Assert.False(commands.IsOn(site.LoadNamed("north/aerator")));
    }

    [Fact]
    public void WhatWasPassedOverCanBeGoneBackToAndIsSkippedOtherwise()
    {
        Press('S');
        Press('B');
        Assert.Equal(1, Page.Number);
        Press('Q');
        Assert.True(walk.IsOver);
        Assert.All(walk.Results, result => Assert.Equal(WiringOutcome.Skipped, result.Outcome));
        Assert.Equal(walk.Results.Count, Page.Count);
    }

    [Fact]
    public void TheLastAnswerEndsTheWalk()
    {
        while (!walk.IsOver)
        {
            Press('S');
        }

        Assert.Equal("north/pump", walk.Results[^1].Name);
        Assert.Empty(Moved());
    }

    private MonotonicTime Now => MonotonicTime.FromMilliseconds(100L * tenths);

    private WiringPage Page => walk.Page(Now, readings);

    private void TryLowFloat()
    {
        GoTo("north/reservoir low float");
        Say("north/reservoir low float", 0);
        Pass(1);
        Say("north/reservoir low float", 1);
        Pass(1);
        Press('Y');
    }

    private void GoTo(string name)
    {
        while (Page.Name != name)
        {
            Press('S');
            Assert.False(walk.IsOver);
        }
    }

    private WiringResult? Press(char key) => walk.Scan(Now, readings, key);

    private void Say(string sensor, double value) => readings[site.SensorNamed(sensor)] = new Reading(value, ReadingQuality.Good, Now);

    private void Pass(int scans, bool spoken = true)
    {
        for (var scan = 0; scan < scans; scan++)
        {
            tenths++;
            foreach (var sensor in site.Sensors.Where(_ => spoken))
            {
                readings[sensor.Id] = readings[sensor.Id] with { TakenAt = Now, Quality = ReadingQuality.Good };
            }

            walk.Scan(Now, readings, key: null);
        }
    }

    // What is told otherwise than its safe state.
    private List<string> Moved()
    {
        walk.Tell(commands);
        return [.. site.Loads.Where(load => commands[load.Id] != load.SafeState).Select(load => load.Name)];
    }
}
