using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row low-float.</summary>
public class LowFloatTests
{
    private const string Float = "north/reservoir low float";
    private const string Key = "north/low-float";

    [Fact]
    public void ADryFloatCutsThePumpWithinOneSecond()
    {
        var rig = FloodingRig();
        var dry = rig.Now.Monotonic;
        rig.Set(Float, 0);

        rig.LeapUntil(() => !rig.IsOn("north/pump"));

        Assert.True(rig.Now.Monotonic - dry <= Duration.FromSeconds(1));
        Assert.Equal("the reservoir's low float is dry", rig.Why("north/pump").Interlocks[0]["low-float: ".Length..]);
        Assert.Equal(AlarmPriority.High, rig.Alarm(Key)!.Priority);
    }

    [Fact]
    public void OneSampleOfDryIsAGlitch()
    {
        var rig = FloodingRig();
        rig.Set(Float, 0);
        rig.Scan();
        rig.Set(Float, 1);
        rig.ScanFor(Duration.FromSeconds(5));

        Assert.True(rig.IsOn("north/pump"));
    }

    [Fact]
    public void ThePumpReturnsOnceTheFloatHasReadWetForAMinute()
    {
        var rig = new Rig(Sites.OneRack().WithLimits(limits => limits with { PumpRest = Duration.FromSeconds(10) }));
        rig.LeapFor(Duration.FromMinutes(3));
        rig.Set(Float, 0);
        rig.LeapFor(Duration.FromMinutes(30));
        rig.Scan(new FloodNow("Ada", new RackId(0)));
        rig.Set(Float, 1);
        var wet = rig.Now.Monotonic;

        rig.LeapUntil(() => rig.IsOn("north/pump"));

        // 2 s until the contact counts as well again, then the 60 s of the limit.
        Assert.Equal(Duration.FromSeconds(62.1), rig.Now.Monotonic - wet);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void AFloatThatFallsDryAgainInTheSameFloodLatches()
    {
        var rig = FloodingRig();
        FallDry(rig);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        FallDry(rig);

        rig.LeapFor(Duration.FromDays(1));

        Assert.False(rig.IsOn("north/pump"));
        Assert.Contains("the reservoir fell low 2 times in one flood", rig.Why("north/pump").Interlocks[0]);
        Assert.Equal(2, rig.Events.Count(e => e is { Subject: "north/pump", What: "on" }));

        rig.Restart(Duration.FromMinutes(5));
        rig.LeapFor(Duration.FromDays(1));
        Assert.Contains("the reservoir fell low 2 times in one flood", rig.Why("north/pump").Interlocks[0]);
        Assert.Equal(2, rig.Events.Count(e => e is { Subject: "north/pump", What: "on" }));
    }

    [Fact]
    public void AFloatThatFallsDryOnceAFloodNeverLatches()
    {
        var rig = FloodingRig();
        for (var flood = 0; flood < 6; flood++)
        {
            FallDry(rig);
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.LeapUntil(() => !rig.IsOn("north/pump"));
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.ScanFor(Duration.FromSeconds(30));
        }
    }

    [Fact]
    public void AnUnknownFloatForbidsThePump()
    {
        var rig = FloodingRig();
        rig.Silence(Float);

        rig.LeapUntil(() => !rig.IsOn("north/pump"));

        Assert.Contains("nobody knows whether the reservoir's low float is wet", rig.Why("north/pump").Summary);
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm($"{Float}/reading-unknown")!.State);
    }

    [Fact]
    public void WhileItMustReadWetThePumpWaitsAndTheAlarmHasReturned()
    {
        var rig = FloodingRig();
        FallDry(rig);
        rig.LeapFor(Duration.FromSeconds(30));
        Assert.Contains(
            rig.Why("north/pump").Interlocks,
            words => words.StartsWith("low-float: the reservoir's low float must read wet until", StringComparison.Ordinal));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void AFloatThatWasUnknownAndIsWetLetsThePumpStartAtOnce()
    {
        var rig = new Rig(Sites.OneRack().WithLimits(limits => limits with { PumpRest = Duration.FromSeconds(10) }));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromMinutes(20));
        rig.Silence(Float);
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Scan(new FloodNow("Ada", new RackId(0)));
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.False(rig.IsOn("north/pump"));
        rig.Speak(Float);
        rig.LeapFor(Duration.FromSeconds(5));
        Assert.True(rig.IsOn("north/pump"));
    }

    [Fact]
    public void TheMinuteOfBeingWetIsCountedFromWhenTheFloatIsKnownToBeWet()
    {
        var rig = FloodingRig();
        FallDry(rig);
        rig.Silence(Float);
        rig.LeapFor(Duration.FromMinutes(30));
        rig.Speak(Float);
        var speaks = rig.Now.Monotonic;

        rig.LeapUntil(() => rig.IsOn("north/pump"));

        Assert.Equal(Duration.FromSeconds(62.1), rig.Now.Monotonic - speaks);
    }

    [Fact]
    public void ARestartDoesNotShortenTheMinuteOfBeingWet()
    {
        var rig = new Rig(Sites.OneRack().WithLimits(limits => limits with
        {
            PumpRest = Duration.FromSeconds(10),
            LowFloatRestored = Duration.FromMinutes(20),
        }));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        FallDry(rig);
        rig.ScanFor(Duration.FromSeconds(10));
        rig.Restart(Duration.FromMinutes(1));
        rig.Scan(new FloodNow("Ada", new RackId(0)));
        rig.LeapFor(Duration.FromMinutes(19.9));
        Assert.False(rig.IsOn("north/pump"));

        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    /// <summary>The pump of the rack draws air below 30 mm.</summary>
    [Fact]
    public void ALevelDownToTheIntakeCutsThePumpWhoseFloatIsStuckWet()
    {
        var rig = new Rig(WithLevel().WithLimits(limits => limits with { FloatsContradictAfter = Duration.FromHours(2) }));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set("north/level", 35);
        rig.ScanFor(Duration.FromSeconds(10));
        Assert.True(rig.IsOn("north/pump"));

        rig.Set("north/level", 34.9);
        rig.Scan();
        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal("low-float: the reservoir's level is down to the pump's intake", rig.Why("north/pump").Interlocks[0]);

        rig.Set("north/level", 44.9);
        rig.LeapFor(Duration.FromHours(1));
        Assert.Single(rig.Events, each => each is { Subject: "north/pump", What: "on" });
        rig.Set("north/level", 45);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    [Fact]
    public void AnUnknownLevelBesideAFloatForbidsNothingAndWithoutOneThePump()
    {
        var beside = new Rig(WithLevel());
        beside.Silence("north/level");
        beside.LeapUntil(() => beside.IsOn("north/pump"));

        var site = WithLevel();
        var rest = site.Sensors.Where(sensor => sensor.Kind != SensorKind.ReservoirLowFloat);
        site = site with { Sensors = [.. rest.Select((one, i) => one with { Id = new(i) })] };
        var alone = new Rig(site with { Circuits = [site.Circuits[0] with { SupplySense = null }] });
        alone.Silence("north/level");
        alone.LeapFor(Duration.FromHours(20));
        Assert.False(alone.IsOn("north/pump"));
        Assert.Contains("nobody knows the reservoir's level", alone.Why("north/pump").Summary, StringComparison.Ordinal);
    }

    private static Site WithLevel()
    {
        var site = Sites.OneRack().WithLimits(limits => limits with { PumpRest = Duration.FromSeconds(10) });
        var level = site.Sensors[0] with
        {
            Id = new SensorId(site.Sensors.Length),
            Name = "north/level",
            Kind = SensorKind.ReservoirLevel,
            PlausibleMax = 430,
            StaleAfter = Duration.FromSeconds(30),
        };
        return site with { Sensors = [.. site.Sensors, level] };
    }

    private static void FallDry(Rig rig)
    {
        rig.Set(Float, 0);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.Set(Float, 1);
    }

    private static Rig FloodingRig()
    {
        var rig = new Rig(Sites.OneRack().WithLimits(limits => limits with { PumpRest = Duration.FromSeconds(10) }));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(30));
        return rig;
    }

    [Fact]
    public void OfTwoFloatsItActsOnEachSoAProofTestOfEitherMustTripIt()
    {
        var one = Sites.OneRack();
        var second = one.Sensors[0] with { Id = new SensorId(one.Sensors.Length), Name = "north/second low float" };
        var site = one with { Sensors = one.Sensors.Add(second) };
        var start = new Rig(site).Now;
        var row = CauseAndEffectTable.Build(new InterlockSite(site, start, [])).Single(each => each.Key == "north/low-float");
        Assert.True(row.ActsOn(one.Sensors[0].Id));
        Assert.True(row.ActsOn(second.Id));
        Assert.False(row.ActsOn(site.SensorNamed("north/leak rope")));
    }

    [Fact]
    public void TwoLevelsThatBothReadLowAreAsLowAsOne()
    {
        var one = Sites.OneRack();
        var level = one.Sensors[0] with { Kind = SensorKind.ReservoirLevel, PlausibleMax = 400 };
        var rig = new Rig(one with
        {
            Sensors =
            [
                .. one.Sensors,
                level with { Id = new SensorId(one.Sensors.Length), Name = "north/level" },
                level with { Id = new SensorId(one.Sensors.Length + 1), Name = "north/second level" },
            ],
        });
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Set("north/level", 20);
        rig.Set("north/second level", 20);
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.False(rig.IsOn("north/pump"));
        Assert.Equal("the reservoir's level is down to the pump's intake", rig.Alarm("north/low-float")!.Cause);
    }
}
