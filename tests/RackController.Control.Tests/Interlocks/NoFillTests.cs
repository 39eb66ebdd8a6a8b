using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row no-fill.</summary>
public class NoFillTests
{
    private const string Key = "north/no-fill";
    private static readonly RackId north = new(0);

    /// <summary>A tenth of the pump's 60 L/min over 25 s and 0.4 m2 is a fall of 6.25 mm (arithmetic).</summary>
    [Theory]
    [InlineData("flow", 0, 5.9)]
    [InlineData("level", 200, 193.8)]
    [InlineData("depth", 0, 2.9)]
    public void APumpOfWhichTooLittleIsSeenIsCutAfterItsTime(string sensor, double before, double during)
    {
        var rig = StartingRig(sensor, before);
        var started = rig.Now.Monotonic;
        rig.Scan();
        rig.Set($"north/{sensor}", during);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));

        Assert.Equal(25, (rig.Now.Monotonic - started).TotalSeconds);
        Assert.Equal("no water was seen to move within 25 s of pumping", rig.Why("north/pump").Interlocks[0]["no-fill: ".Length..]);
        Assert.Equal(AlarmPriority.High, rig.Alarm(Key)!.Priority);
    }

    [Theory]
    [InlineData("flow", 0, 6)]
    [InlineData("level", 200, 193.7)]
    [InlineData("depth", 0, 3)]
    public void OneThatJustMovesEnoughRunsOn(string sensor, double before, double during)
    {
        var rig = StartingRig(sensor, before);
        rig.Scan();
        rig.Set($"north/{sensor}", during);
        rig.LeapFor(Duration.FromMinutes(9));
        Assert.True(rig.IsOn("north/pump"));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void OneSensorThatSeesTheWaterIsEnough()
    {
        var rig = new Rig(With(SensorKind.PumpFlow, SensorKind.ReservoirLevel));
        rig.Set("north/flow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set("north/level", 150);
        rig.LeapFor(Duration.FromMinutes(9));
        Assert.True(rig.IsOn("north/pump"));
    }

    [Fact]
    public void AMeterThatShowedFlowWhileThePumpStoodProvesNothing()
    {
        var rig = new Rig(With(SensorKind.PumpFlow, SensorKind.TrayLevel));
        rig.Set("north/flow", 30);
        rig.Set("north/depth", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromSeconds(26));
        Assert.False(rig.IsOn("north/pump"));
    }

    [Fact]
    public void FlowThatWasSeenAndIsLostForItsTimeCutsThePump()
    {
        var rig = StartingRig("flow", 0);
        rig.Set("north/flow", 30);
        rig.LeapFor(Duration.FromMinutes(4));
        rig.Set("north/flow", 1);
        rig.LeapFor(Duration.FromSeconds(24));
        Assert.True(rig.IsOn("north/pump"));
        rig.Set("north/flow", 30);
        rig.LeapFor(Duration.FromSeconds(5));
        rig.Set("north/flow", 1);
        rig.Scan();
        var lost = rig.Now.Monotonic;
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        Assert.Equal(25, (rig.Now.Monotonic - lost).TotalSeconds);
    }

    [Fact]
    public void SeveralThatSeeNothingCutThePumpAsOneDoes()
    {
        var rig = new Rig(With(SensorKind.PumpFlow, SensorKind.ReservoirLevel));
        rig.Set("north/flow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromSeconds(26));
        Assert.False(rig.IsOn("north/pump"));
    }

    [Theory]
    [InlineData("flow", 0)]
    [InlineData("level", 200)]
    [InlineData("depth", 0)]
    public void ASensorThatNobodyCanBelieveStopsNothing(string sensor, double before)
    {
        var rig = StartingRig(sensor, before);
        rig.Silence($"north/{sensor}");
        rig.LeapFor(Duration.FromMinutes(9));
        Assert.True(rig.IsOn("north/pump"));
    }

    /// <summary>The pump's nameplate says 0.375 A (arithmetic); a rotor that is held fast draws several times that. Whether the water
    /// moves is judged 25 s from the start.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(19.9)]
    [InlineData(20)]
    [InlineData(20.1)]
    [InlineData(180)]
    public void APumpThatIsHeldFastIsCutFiveSecondsLaterThoughWaterHasMoved(double runsForSeconds)
    {
        var rig = new Rig(With(SensorKind.ReservoirLevel).WithPumpCurrent());
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
        rig.Set("north/level", 150);
        rig.Set("north/pump current", 0.4);
        rig.LeapFor(Duration.FromSeconds(runsForSeconds) - Duration.FromMilliseconds(200));
        rig.Set("north/pump current", 1.5);
        rig.Scan();
        var heldFast = rig.Now.Monotonic;
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        Assert.Equal(5, (rig.Now.Monotonic - heldFast).TotalSeconds);
        Assert.NotNull(rig.Alarm(Key));
    }

    [Fact]
    public void OneMoreFloodIsTriedAndThenSomebodyMustLook()
    {
        var rig = StartingRig("flow", 0);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromDays(2));

        Assert.Equal(2, rig.Events.Count(e => e is { Subject: "north/pump", What: "on" }));
        Assert.Contains("2 times in a row", rig.Why("north/pump").Interlocks[0], StringComparison.Ordinal);

        rig.Set("north/flow", 30);
        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Ada", Key));
        rig.Set("north/flow", 0);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    [Fact]
    public void WhatIsLatchedMayBeResetAsSoonAsThePumpStands()
    {
        var rig = StartingRig("flow", 0);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.Scan();
        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Ben", Key));
        Assert.DoesNotContain(rig.Why("north/pump").Interlocks, words => words.StartsWith("no-fill", StringComparison.Ordinal));
    }

    [Fact]
    public void OneThatIsNotLatchedRestsFirst()
    {
        var rig = StartingRig("flow", 0);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        var stopped = rig.Now.Monotonic;
        rig.LeapUntil(() => !rig.Why("north/pump").Interlocks.Any(words => words.StartsWith("no-fill", StringComparison.Ordinal)));
        Assert.Equal(rig.Site.Racks[0].Limits.PumpRest, rig.Now.Monotonic - stopped);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void AFloodThatIsSeenBetweenBeginsTheCountAnew()
    {
        var rig = StartingRig("flow", 0);
        for (var day = 0; day < 4; day++)
        {
            rig.LeapUntil(() => !rig.IsOn("north/pump"));
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.Set("north/flow", 30);
            rig.LeapUntil(() => !rig.IsOn("north/pump"));
            rig.Set("north/flow", 0);
            rig.LeapUntil(() => rig.IsOn("north/pump"));
        }
    }

    [Fact]
    public void AFlowThatIsLostInTwoFloodsInARowLatchesThoughItWasSeenAtFirst()
    {
        var rig = StartingRig("flow", 0);
        for (var flood = 0; flood < 2; flood++)
        {
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.Set("north/flow", 30);
            rig.LeapFor(Duration.FromMinutes(1));
            rig.Set("north/flow", 0);
            rig.LeapUntil(() => !rig.IsOn("north/pump"));
        }

        rig.Scan();
        Assert.Contains(rig.Events, each => each is { Subject: Key, What: "latched" });
    }

    [Fact]
    public void ARestartRemembersTheFloodThatWasNotSeenAndTheLatch()
    {
        var rig = StartingRig("flow", 0);
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        Assert.Contains(rig.Events, each => each is { Subject: Key, What: "latched" });
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromDays(2));
        Assert.Equal(2, rig.Events.Count(each => each is { Subject: "north/pump", What: "on" }));
        Assert.Contains("no-fill", rig.Why("north/pump").Interlocks[0], StringComparison.Ordinal);
    }

    // The pump of the test rack gives 60 L/min at most; its reservoir has 0.4 m2.
    private static Rig StartingRig(string sensor, double before)
    {
        var rig = new Rig(With(sensor switch
        {
            "flow" => SensorKind.PumpFlow,
            "level" => SensorKind.ReservoirLevel,
            _ => SensorKind.TrayLevel,
        }));
        rig.Set($"north/{sensor}", before);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        return rig;
    }

    /// <summary>A rack of one tier with more sensors of these kinds.</summary>
    internal static Site With(params SensorKind[] kinds)
    {
        var site = Sites.OneRack(tiers: 1);
        var more = kinds.Select((kind, i) => site.Sensors[0] with
        {
            Id = new SensorId(site.Sensors.Length + i),
            Name = kind switch
            {
                SensorKind.PumpFlow => i == 0 ? "north/flow" : $"north/flow {i + 1}",
                SensorKind.ReservoirLevel => "north/level",
                SensorKind.TrayLevel => "north/depth",
                _ => "north/full",
            },
            Kind = kind,
            Rack = north,
            TierNumber = kind is SensorKind.TrayLevel or SensorKind.TrayFullFloat ? 1 : null,
            PlausibleMax = kind switch { SensorKind.PumpFlow => 72, SensorKind.ReservoirLevel => 430, SensorKind.TrayLevel => 115, _ => 1 },
        });
        return site with { Sensors = [.. site.Sensors, .. more] };
    }
}
