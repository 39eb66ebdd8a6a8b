using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row air-too-hot.</summary>
public class TemperatureTests
{
    [Fact]
    public void HotAirPutsOutTheLightsOfItsTierOnly()
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 32.1);
        rig.Scan();

        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.False(rig.IsOn("north/tier 2 light"));
        Assert.Equal("the air is at 32.1 °C and lights are out above 32 °C", rig.Why("north/tier 2 light").Summary);
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/tier 2/air-too-hot")!.State);
    }

    [Fact]
    public void TheLightsReturnOnceTheAirHasCooledByTheMargin()
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 33);
        rig.Scan();
        rig.Set("north/tier 2 air", 30.1);
        rig.LeapFor(Duration.FromMinutes(5));
        Assert.False(rig.IsOn("north/tier 2 light"));

        rig.Set("north/tier 2 air", 29.9);
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(rig.IsOn("north/tier 2 light"));
        var returned = rig.Events.Last(each => each is { Kind: EventKind.Alarm, Subject: "north/tier 2/air-too-hot" });
        Assert.Equal("the air is at 29.9 °C and lights are out above 32 °C", returned.Because);
        Assert.Equal(
            "the air was too hot when last measured and lights are out above 32 °C", rig.Alarm("north/tier 2/air-too-hot")!.Cause);
    }

    [Fact]
    public void WhileTheLightsAreOutItSaysHowHotItIsNow()
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 33);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Set("north/tier 2 air", 34.5);
        rig.Scan();
        Assert.Equal("the air is at 34.5 °C and lights are out above 32 °C", rig.Why("north/tier 2 light").Summary);
    }

    [Fact]
    public void AirAtItsLimitChangesNothing()
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 32);
        rig.Scan();

        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void ATierWhoseTemperatureNobodyKnowsIsDarkAfterAMoment()
    {
        var rig = LitRig();
        rig.Silence("north/tier 2 air");

        // It is stale after 30 s.
        var silent = rig.Now.Monotonic;
        rig.LeapUntil(() => !rig.IsOn("north/tier 2 light"));
        Assert.Equal(Duration.FromSeconds(90.1), rig.Now.Monotonic - silent);
        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.Equal("nobody has known the temperature of the air for 1 min", rig.Why("north/tier 2 light").Summary);
        Assert.Null(rig.Alarm("north/tier 2/air-too-hot"));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/tier 2 air/reading-unknown")!.State);

        rig.Speak("north/tier 2 air");
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void ASensorThatComesAndGoesHasItsMomentEachTime()
    {
        var rig = LitRig();
        for (var time = 0; time < 3; time++)
        {
            rig.Silence("north/tier 2 air");
            rig.LeapFor(Duration.FromSeconds(75));
            rig.Speak("north/tier 2 air");
            rig.LeapFor(Duration.FromSeconds(10));
        }

        Assert.DoesNotContain(rig.Events, each => each is { Subject: "north/tier 2 light", What: "off" });
    }

    [Fact]
    public void ALightThatIsFoundToStayOnWhileTheHeatIsNoLongerMeasuredIsCutToo()
    {
        var circuit = new LiveCircuit(site => WithAir(site).WithContactor());
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/tier 2 light"));
        circuit.Rig.LeapFor(Duration.FromMinutes(1));
        circuit.Weld("north/tier 2 light");

        // It is stale after 30 s, and the current is judged 3 s after the switching.
        circuit.Rig.Silence("north/tier 2 air");
        circuit.Rig.ScanFor(Duration.FromSeconds(29));
        circuit.Rig.Set("north/tier 2 air", 33);
        circuit.Rig.Scan();
        Assert.False(circuit.Rig.IsOn("north/tier 2 light"));
        circuit.Rig.ScanFor(Duration.FromSeconds(2));
        Assert.False(circuit.Rig.IsCut);
        circuit.Rig.ScanFor(Duration.FromSeconds(3));
        Assert.True(circuit.Rig.IsCut);
    }

    [Fact]
    public void TheMomentBeginsWhenTheLastSensorOfTheSameAirFellSilent()
    {
        var site = LitRig().Site;
        var air = site.Sensors.Single(sensor => sensor.Name == "north/tier 2 air");
        var rig = new Rig(site with
        {
            Sensors = [.. site.Sensors, air with { Id = new(site.Sensors.Length), Name = "north/air", TierNumber = null }],
        });
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Silence("north/tier 2 air");
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Silence("north/air");

        // It is stale after 30 s.
        rig.LeapFor(Duration.FromSeconds(85));
        Assert.True(rig.IsOn("north/tier 2 light"));
        rig.LeapFor(Duration.FromSeconds(10));
        Assert.False(rig.IsOn("north/tier 2 light"));
    }

    [Theory]
    [InlineData(true, true)]
    [InlineData(false, false)]
    public void WhereEveryLitTierHasASensorThatOfTheRackMayBeSilent(bool isTierOneMeasured, bool staysOn)
    {
        var site = LitRig().Site;
        var air = site.Sensors.Single(sensor => sensor.Name == "north/tier 2 air");
        site = site with
        {
            Sensors =
            [
                .. site.Sensors,
                air with { Id = new(site.Sensors.Length), Name = "north/air", TierNumber = null },
                air with { Id = new(site.Sensors.Length + 1), Name = "north/more air", TierNumber = isTierOneMeasured ? 1 : 2 },
            ],
        };
        var rig = new Rig(site);
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Silence("north/air");
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.Equal(staysOn, rig.IsOn("north/tier 1 light"));
        Assert.Equal(staysOn, rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void AnotherSensorOfTheSameAirKeepsTheLightOfOneThatIsUnknown()
    {
        var site = LitRig().Site;
        var air = site.Sensors.Single(sensor => sensor.Name == "north/tier 2 air");
        site = site with { Sensors = [.. site.Sensors, air with { Id = new(site.Sensors.Length), Name = "north/air", TierNumber = null }] };
        var rig = new Rig(site);
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Silence("north/tier 2 air");
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.True(rig.IsOn("north/tier 2 light"));

        // The sensor of one tier says nothing of the other's air.
        rig.Speak("north/tier 2 air");
        rig.Silence("north/air");
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.False(rig.IsOn("north/tier 1 light"));
    }

    [Fact]
    public void HotTiersStayDarkAcrossARestartThatLosesTheirTemperature()
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 35);
        rig.Scan();
        rig.Silence("north/tier 2 air");
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(10));

        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.False(rig.IsOn("north/tier 2 light"));
        Assert.Equal(
            "the air was too hot when last measured and lights are out above 32 °C", rig.Why("north/tier 2 light").Summary);

        rig.Speak("north/tier 2 air");
        rig.Set("north/tier 2 air", 29.9);
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Theory]
    [InlineData(33)]
    [InlineData(25)]
    public void ThatItBecomesHotOrCoolsIsSavedAtOnce(double airC)
    {
        var rig = LitRig();
        rig.Set("north/tier 2 air", 58 - airC);
        rig.ScanFor(Duration.FromSeconds(5));
        var version = rig.Control.MemoryVersion;
        rig.Set("north/tier 2 air", airC);
        rig.Scan();

        // It and its alarm.
        Assert.Equal(2, rig.Control.MemoryVersion - version);
    }

    [Fact]
    public void ATierThatWasNotHotIsNotTakenForHotAfterARestart()
    {
        var rig = LitRig();
        rig.Silence("north/tier 2 air");
        rig.Restart(Duration.FromMinutes(1));
        rig.LeapFor(Duration.FromMinutes(10));
        Assert.Equal("nobody has known the temperature of the air for 1 min", rig.Why("north/tier 2 light").Summary);
        Assert.Null(rig.Alarm("north/tier 2/air-too-hot"));
    }

    internal static Rig LitRig()
    {
        var rig = new Rig(WithAir(Sites.OneRack()));
        rig.LeapFor(Duration.FromMinutes(1));
        return rig;
    }

    private static Site WithAir(Site rack)
    {
        var site = rack.WithSchedule(s => s with { Floods = s.Floods with { Times = new NoFloods() } });
        var air = new Sensor
        {
            Id = new SensorId(site.Sensors.Length),
            Name = "north/tier 2 air",
            Kind = SensorKind.AirTemperature,
            Rack = new RackId(0),
            TierNumber = 2,
            PlausibleMin = -20,
            PlausibleMax = 60,
            StaleAfter = Duration.FromSeconds(30),
        };
        var water = air with
        {
            Id = new SensorId(site.Sensors.Length + 1),
            Name = "north/water",
            Kind = SensorKind.WaterTemperature,
            TierNumber = null,
        };
        return site with { Sensors = [.. site.Sensors, air, water] };
    }
}
