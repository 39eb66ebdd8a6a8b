using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row light-stays-on. Each light of the site draws 80 W / 120 V = 0.67 A; they are out above 32 °C until below 30 °C.</summary>
public class LightStaysOnTests
{
    private const string Light = "north/tier 2 light";
    private const string Key = $"{Light}/light-stays-on";
    private const string TierAir = "north/tier 2 air";
    private const string RackAir = "north/air";

    [Fact]
    public void ALightThatIsKnownToStayOnInTheHeatIsCutUntilSomebodyResets()
    {
        var circuit = Lit(TierAir);
        circuit.Weld(Light);
        circuit.Rig.Set(TierAir, 33);
        circuit.Rig.ScanFor(Duration.FromSeconds(3));
        Assert.False(circuit.Rig.IsCut);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsCut);

        // In that very scan, though the interlock stands at the rack and the contactor at the circuit.
        Assert.All(circuit.Rig.Site.Loads, load => Assert.False(circuit.Rig.IsOn(load.Name)));
        circuit.Rig.ScanFor(Duration.FromSeconds(5));
        Assert.Equal(
            $"{Light} stayed on in air that is too hot though its relay was told off, and the contactor cuts sockets until "
            + "somebody has pulled that light's plug and resets",
            circuit.Rig.Alarm(Key)!.Cause);

        circuit.Rig.Set(TierAir, 20);
        circuit.Rig.LeapFor(Duration.FromHours(12));
        Assert.True(circuit.Rig.IsCut);
        Assert.Single(circuit.Rig.Events, each => each.Subject == "sockets/contactor");

        // Its plug is pulled.
        circuit.Mend(Light);
        circuit.Draws(Light, 0);
        Reset(circuit.Rig);
        circuit.Rig.LeapFor(Duration.FromHours(2));
        Assert.False(circuit.Rig.IsCut);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, circuit.Rig.Alarm(Key)!.State);
        Assert.True(circuit.Rig.IsOn("north/aerator"));
    }

    [Fact]
    public void OnceItsPlugIsPulledTheContactorClosesByAResetInAirThatIsStillTooHot()
    {
        var circuit = Welded();
        circuit.Mend(Light);
        circuit.Draws(Light, 0);
        Reset(circuit.Rig);
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.False(circuit.Rig.IsCut);
        Assert.True(circuit.Rig.IsOn("north/aerator"));
        Assert.False(circuit.Rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void AResetOfALightThatIsStillWeldedIsFoundOutBeforeAnythingElseIsOn()
    {
        var circuit = Welded();
        Reset(circuit.Rig);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsCut);
        circuit.Rig.LeapUntil(() => circuit.Rig.IsCut || circuit.Rig.IsOn("north/aerator"));
        Assert.True(circuit.Rig.IsCut);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void AResetLeavesTheContactorOpenWhileHandsAreInTheRackAndAMomentLonger()
    {
        var circuit = Welded();
        circuit.Rig.Scan(new HoldForService("Ada", new RackId(0), Duration.FromMinutes(20)));
        Reset(circuit.Rig);
        circuit.Rig.LeapFor(Duration.FromMinutes(10));
        Assert.True(circuit.Rig.IsCut);

        circuit.Rig.Scan(new EndServiceHold("Ada", new RackId(0)));
        var ended = circuit.Rig.Now.Monotonic;
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsCut);
        Assert.Equal(circuit.Rig.Site.Racks[0].Limits.StartDelay, circuit.Rig.Now.Monotonic - ended);
    }

    [Fact]
    public void ARestartForgetsNoLightThatStaysOn()
    {
        var circuit = Welded();
        circuit.Rig.Restart(Duration.FromSeconds(30));
        circuit.Rig.Scan();
        Assert.True(circuit.Rig.IsCut);
        circuit.Rig.Set(TierAir, 20);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void ALightThatOnlySeemsToStayOnIsCutUntilTheAirHasCooled()
    {
        // Two lights that draw as much go out together, so nobody knows which of them stays on.
        var circuit = Lit(RackAir);
        circuit.Weld(Light);
        circuit.Rig.Set(RackAir, 33);
        circuit.Rig.ScanFor(Duration.FromSeconds(5));
        Assert.True(circuit.Rig.IsCut);
        Assert.Equal(
            $"{Light}, or one that draws as much, seems to stay on in air that is too hot though its relay was told off, and the "
            + "contactor cuts sockets until the air has cooled",
            circuit.Rig.Alarm(Key)!.Cause);

        circuit.Rig.Set(RackAir, 30.1);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.True(circuit.Rig.IsCut);
        circuit.Rig.Set(RackAir, 29.9);
        circuit.Rig.Scan();
        Assert.False(circuit.Rig.IsCut);
        Assert.StartsWith($"{Light}, or one that draws as much, seemed to", circuit.Rig.Alarm(Key)!.Cause, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void TheThirdTimeInADayALightThatOnlySeemsToStayOnIsCutUntilSomebodyResetsAlsoThroughRestarts(bool restarts)
    {
        var circuit = Lit(RackAir);
        circuit.Weld(Light);
        for (var heat = 1; heat <= 3; heat++)
        {
            circuit.Rig.Set(RackAir, 33);
            circuit.Rig.ScanFor(Duration.FromSeconds(5));
            Assert.True(circuit.Rig.IsCut);
            circuit.Rig.Set(RackAir, 29.9);
            circuit.Rig.LeapFor(Duration.FromMinutes(20));
            Assert.Equal(heat == 3, circuit.Rig.IsCut);
            if (restarts)
            {
                circuit.Rig.Restart(Duration.FromSeconds(30));
                circuit.Rig.LeapFor(Duration.FromMinutes(20));
            }
        }

        Assert.StartsWith($"{Light} stayed on", circuit.Rig.Alarm(Key)!.Cause, StringComparison.Ordinal);
    }

    [Fact]
    public void ALightThatStaysOnInCoolAirLeavesAirAndWaterAlone()
    {
        var circuit = Lit(TierAir);
        circuit.Weld(Light);
        circuit.Rig.LeapUntil(() => !circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.NotNull(circuit.Rig.Alarm($"{Light}/relay-welded"));
        Assert.False(circuit.Rig.IsCut);
    }

    [Fact]
    public void ALightThatGoesOutInTheHeatCutsNothing()
    {
        var circuit = Lit(TierAir);
        circuit.Rig.Set(TierAir, 33);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        Assert.False(circuit.Rig.IsOn(Light));
        Assert.False(circuit.Rig.IsCut);
        Assert.Null(circuit.Rig.Alarm(Key));
    }

    [Fact]
    public void HeatThatNobodyMeasuresAnyMoreStillCutsALightThatStaysOn()
    {
        var circuit = Lit(TierAir);
        circuit.Rig.Set(TierAir, 33);
        circuit.Rig.ScanFor(Duration.FromSeconds(5));
        circuit.Rig.Silence(TierAir);
        circuit.Rig.Restart(Duration.FromSeconds(30));
        circuit.Weld(Light);
        circuit.Rig.LeapFor(Duration.FromMinutes(2));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void TwoSensorsThatBothFindTheAirTooHotCutItAsOneDoes()
    {
        var circuit = new LiveCircuit(site => With(TierAir, With(RackAir, site.WithContactor())));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Weld(Light);
        circuit.Rig.Set(TierAir, 33);
        circuit.Rig.Set(RackAir, 33);
        circuit.Rig.ScanFor(Duration.FromSeconds(8));
        Assert.True(circuit.Rig.IsCut);
        Assert.NotNull(circuit.Rig.Alarm(Key));
    }

    private static LiveCircuit Welded()
    {
        var circuit = Lit(TierAir);
        circuit.Weld(Light);
        circuit.Rig.Set(TierAir, 33);
        circuit.Rig.ScanFor(Duration.FromSeconds(8));
        Assert.True(circuit.Rig.IsCut);
        return circuit;
    }

    private static void Reset(Rig rig)
    {
        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Ben", Key));
        Assert.Contains(rig.Events, each => each.Subject == Key && each.What.EndsWith("the latch is released", StringComparison.Ordinal));
    }

    private static LiveCircuit Lit(string air)
    {
        var circuit = new LiveCircuit(site => With(air, site.WithContactor()));
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn(Light));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        return circuit;
    }

    private static Site With(string air, Site rack)
    {
        var site = rack.WithSchedule(schedule => schedule with { Floods = schedule.Floods with { Times = new NoFloods() } });
        return site with
        {
            Sensors =
            [
                .. site.Sensors,
                new Sensor
                {
                    Id = new SensorId(site.Sensors.Length),
                    Name = air,
                    Kind = SensorKind.AirTemperature,
                    Rack = new RackId(0),
                    TierNumber = air == TierAir ? 2 : null,
                    PlausibleMin = -20,
                    PlausibleMax = 60,
                    StaleAfter = Duration.FromSeconds(30),
                },
            ],
        };
    }
}
