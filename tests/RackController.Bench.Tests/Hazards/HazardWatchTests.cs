using RackController.Bench.Tests.Support;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Hazards;

public sealed class HazardWatchTests
{
    private readonly FakeObserved now = new();
    private readonly HazardBook book = new(new EventLog());

    [Fact]
    public void ACentilitreOnTheFloorIsNoHazardAndMoreIs()
    {
        var watch = new WaterOnTheFloor();
        now.Spill = 0.01;
        watch.Look(now, book);
        Assert.Empty(book.Hazards);
        now.Spill = 0.02;
        watch.Look(now.After(1), book);
        watch.Look(now.After(1), book);
        Assert.Equal(HazardKind.WaterOnTheFloor, Assert.Single(book.Hazards).Kind);
    }

    [Theory]
    [InlineData(30, 0)]
    [InlineData(30.1, 1)]
    public void ADryPumpIsForgivenHalfAMinute(double seconds, int hazards)
    {
        var watch = new PumpRunsDry(now.Site);
        now.Reservoir = 10; // 25 mm: below the intake at 30 mm.
        now.Powered.Add(now.Pump);
        watch.Look(now, book);
        watch.Look(now.After(seconds), book);
        Assert.Equal(hazards, book.Hazards.Length);
    }

    // Between two looks of a run that leaps lies an hour; nothing was dry in it.
    [Fact]
    public void ATimeIsCountedFromWhereItWasFirstSeenAndItsEndIsAskedFor()
    {
        var watch = new PumpRunsDry(now.Site);
        now.Powered.Add(now.Pump);
        watch.Look(now, book);
        now.After(3600).Reservoir = 10;
        watch.Look(now, book);

        Assert.Empty(book.Hazards);
        Assert.Equal(now.Elapsed + NodaTime.Duration.FromSeconds(30) + NodaTime.Duration.Epsilon, now.AskedToLookBy);
    }

    [Fact]
    public void ARunOfThePumpIsShownWhereItBecomesTooLong()
    {
        now.Powered.Add(now.Pump);
        new PumpPastItsMaximumRun().Look(now, book);
        var longest = now.Site.Racks[0].Limits.PumpMaximumRun + NodaTime.Duration.FromSeconds(1);
        Assert.Equal(longest + NodaTime.Duration.Epsilon, now.AskedToLookBy);
    }

    [Fact]
    public void ADryPumpThatFindsWaterAgainStartsItsTimeAnew()
    {
        var watch = new PumpRunsDry(now.Site);
        now.Powered.Add(now.Pump);
        foreach (var litres in (double[])[10, 100, 10])
        {
            now.Reservoir = litres;
            watch.Look(now.After(20), book);
        }

        Assert.Empty(book.Hazards);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 1)]
    public void APumpPastItsMaximumRunIsSeenOnceAScanHasHadItsChance(double secondsOver, int hazards)
    {
        now.Unbroken = now.Site.Racks[0].Limits.PumpMaximumRun + NodaTime.Duration.FromSeconds(secondsOver);
        new PumpPastItsMaximumRun().Look(now, book);
        Assert.Equal(hazards, book.Hazards.Length);
        Assert.All(book.Hazards, hazard => Assert.EndsWith("although it was told to be off", hazard.Seen, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(false, 19.9, 0)]
    [InlineData(false, 20.1, 1)]
    [InlineData(true, 19.9, 1)]
    public void APumpThatWasToldOffMayRunUntilItsTimeRelayMustHaveOpened(bool isTold, double minutes, int hazards)
    {
        var timed = new FakeObserved
        {
            Site = Sites.OneRack().WithRack(rack => rack with { TimeCutout = new TimeCutout(NodaTime.Duration.FromMinutes(20)) }),
        };
        timed.Powered.Add(timed.Pump);
        timed.Told.UnionWith(isTold ? [timed.Pump] : []);
        timed.Unbroken = NodaTime.Duration.FromMinutes(minutes);
        new PumpPastItsMaximumRun().Look(timed, book);
        Assert.Equal(hazards, book.Hazards.Length);
    }

    // 15 A breaker, 12 A for hours. NEC Art. 100: continuous is 3 h or more (from memory); UL 489: open at 135 % within 1 h
    // and at 200 % within 2 min, as quoted by optifuse.com.
    [Theory]
    [InlineData(12.5, 3 * 3600, 0)]
    [InlineData(12.5, 3 * 3600 + 1, 1)]
    [InlineData(20.3, 3600, 0)]
    [InlineData(20.3, 3601, 1)]
    [InlineData(30.1, 120, 0)]
    [InlineData(30.1, 121, 1)]
    [InlineData(12.0, 100_000, 0)]
    public void ACircuitIsOverloadedOnceItsBreakersOwnTimeIsOver(double currentA, double seconds, int hazards)
    {
        var watch = new CircuitOverloaded(now.Site);
        now.Current = currentA;
        watch.Look(now, book);
        watch.Look(now.After(seconds), book);
        Assert.Equal(hazards, book.Hazards.Length);
    }

    [Theory]
    [InlineData(33, 60, 0)]
    [InlineData(33, 61, 1)]
    [InlineData(31, 600, 0)]
    public void ALightAboveTheTemperatureLimitIsForgivenAMinute(double airC, double seconds, int hazards)
    {
        var watch = new LightsInTheHeat(now.Site);
        now.Air = airC;
        now.Powered.Add(now.Site.Racks[0].Tier(1).Light!.Value);
        watch.Look(now, book);
        watch.Look(now.After(seconds), book);
        Assert.Equal(hazards, book.Hazards.Length);
    }

    [Fact]
    public void DarkTiersAreNoHazardHoweverHot()
    {
        var watch = new LightsInTheHeat(now.Site);
        now.Air = 40;
        watch.Look(now.After(600), book);
        Assert.Empty(book.Hazards);
    }
}
