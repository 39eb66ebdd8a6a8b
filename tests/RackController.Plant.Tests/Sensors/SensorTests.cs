using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class SensorTests
{
    [Theory]
    [InlineData(SensorKind.ReservoirLevel, null)]
    [InlineData(SensorKind.ReservoirFullFloat, null)]
    [InlineData(SensorKind.TrayLevel, 1)]
    [InlineData(SensorKind.TrayFullFloat, 1)]
    [InlineData(SensorKind.PumpFlow, null)]
    [InlineData(SensorKind.WaterTemperature, null)]
    [InlineData(SensorKind.AirTemperature, null)]
    [InlineData(SensorKind.AirTemperature, 1)]
    [InlineData(SensorKind.AirHumidity, null)]
    [InlineData(SensorKind.AirHumidity, 1)]
    [InlineData(SensorKind.LightLevel, 1)]
    [InlineData(SensorKind.PumpCurrent, null)]
    [InlineData(SensorKind.CircuitCurrent, null)]
    public void EveryKindIsAnsweredFromTheTruth(SensorKind kind, int? tier)
    {
        var rack = Watched(kind, tier);
        rack.Flood();
        rack.Switch("north/tier 1 light", on: true);
        rack.To(300);
        var expected = kind switch
        {
            SensorKind.ReservoirLevel => rack.Truth.ReservoirLevelMm,
            SensorKind.ReservoirFullFloat => rack.Truth.ReservoirLevelMm >= 30 ? 1 : 0,
            SensorKind.TrayLevel => rack.Truth.Tiers[0].DepthMm,
            SensorKind.TrayFullFloat => rack.Truth.Tiers[0].DepthMm >= 30 ? 1 : 0,
            SensorKind.PumpFlow => rack.Truth.PumpFlowLpm,
            SensorKind.WaterTemperature => rack.Truth.WaterTemperatureC,
            SensorKind.AirTemperature => rack.Truth.Tiers[0].AirTemperatureC,
            SensorKind.AirHumidity => rack.Truth.Tiers[0].AirHumidityPercent,
            SensorKind.LightLevel => 180 / 0.015,
            SensorKind.PumpCurrent => rack.Load("north/pump").CurrentA,
            _ => rack.Plant.Circuits[0].CurrentA,
        };
        var reading = rack.Reading("extra");
        Assert.Equal(ReadingQuality.Good, reading.Quality);
        Assert.Equal(expected, reading.Value, 1e-9);
        Assert.True(reading.Value > 0);
    }

    [Fact]
    public void ALightMeterSeesWhatTheLampReallyDoes()
    {
        var rack = Watched(SensorKind.LightLevel, 1);
        Assert.Equal(0, rack.Reading("extra").Value);
        rack.Switch("north/tier 1 light", on: true);
        Assert.Equal(180 / 0.015, rack.Reading("extra").Value, 1e-9);
        rack.Inject(FaultKind.LoadDead, 1000, fault => fault with { Load = rack.Site.LoadNamed("north/tier 1 light") });
        Assert.Equal(0, rack.Reading("extra").Value);
    }

    [Fact]
    public void ALampWhoseRelayWeldedShinesOnAndIsSeen()
    {
        var rack = Watched(SensorKind.LightLevel, 1);
        rack.Switch("north/tier 1 light", on: true);
        rack.Inject(FaultKind.RelayWelded, 1000, fault => fault with { Load = rack.Site.LoadNamed("north/tier 1 light") });
        rack.Switch("north/tier 1 light", on: false);
        Assert.Equal(180 / 0.015, rack.Reading("extra").Value, 1e-9);
    }

    [Fact]
    public void AFloatChangesExactlyWhereTheWaterReachesIt()
    {
        var rack = Watched(SensorKind.TrayFullFloat, 1);
        rack.Flood();
        while (rack.Reading("extra").Value == 0)
        {
            rack.Plant.AdvanceToNews(rack.After(600));
        }

        Assert.Equal(30, rack.Truth.Tiers[0].DepthMm, 1e-6);
    }

    [Fact]
    public void NoiseScattersAboutTheTruthByItsSize()
    {
        var rack = Watched(SensorKind.ReservoirLevel, null);
        rack.Inject(FaultKind.SensorNoise, 1e6, fault => fault with { Sensor = rack.Site.SensorNamed("extra"), Size = 2 });
        var errors = new List<double>();
        for (var step = 0; step < 4000; step++)
        {
            rack.To(rack.Seconds + 1);
            errors.Add(rack.Reading("extra").Value - rack.Truth.ReservoirLevelMm);
        }

        Assert.InRange(errors.Average(), -0.2, 0.2);
        Assert.InRange(Math.Sqrt(errors.Average(error => error * error)), 1.9, 2.1);
    }

    [Fact]
    public void ALightMeterThatScattersNeverSaysLessThanNoLight()
    {
        var rack = Watched(SensorKind.LightLevel, 1);
        rack.Inject(FaultKind.SensorNoise, 1e6, fault => fault with { Sensor = rack.Site.SensorNamed("extra"), Size = 50 });
        var said = new List<double>();
        for (var step = 0; step < 100; step++)
        {
            rack.To(rack.Seconds + 1);
            said.Add(rack.Reading("extra").Value);
        }

        Assert.Equal(0, said.Min());
        Assert.NotEqual(0, said.Max());
    }

    [Fact]
    public void DriftGrowsWithTime()
    {
        var rack = Watched(SensorKind.ReservoirLevel, null);
        rack.Inject(FaultKind.SensorDrift, 1e6, fault => fault with { Sensor = rack.Site.SensorNamed("extra"), Size = -6 });
        rack.To(1800);
        Assert.Equal(rack.Truth.ReservoirLevelMm - 3, rack.Reading("extra").Value, 1e-9);
    }

    [Fact]
    public void ADropoutGrowsOldAndAFrozenSensorDoesNot()
    {
        var rack = Watched(SensorKind.TrayLevel, 1);
        rack.Flood();
        rack.To(60);
        var before = rack.Reading("extra");
        before = before with { TakenAt = before.TakenAt + -Duration.Epsilon };
        rack.Inject(FaultKind.SensorDropout, 60, fault => fault with { Sensor = rack.Site.SensorNamed("extra") });
        rack.To(119);
        Assert.Equal(before, rack.Reading("extra"));

        rack.To(121);
        var later = rack.Reading("extra");
        Assert.True(later.Value > before.Value);
        rack.Inject(FaultKind.SensorFrozen, 60, fault => fault with { Sensor = rack.Site.SensorNamed("extra") });
        rack.To(180);
        Assert.Equal(later with { TakenAt = rack.Now }, rack.Reading("extra"));
    }

    [Fact]
    public void ACorruptReadingSaysSo()
    {
        var rack = Watched(SensorKind.TrayLevel, 1);
        rack.Inject(FaultKind.SensorCorrupt, 60, fault => fault with { Sensor = rack.Site.SensorNamed("extra") });
        Assert.Equal(ReadingQuality.Corrupt, rack.Reading("extra").Quality);
    }

    [Fact]
    public void ASlowFloatShowsTheWaterLate()
    {
        var rack = new TestSite(1);
        const string Float = "north/reservoir low float";
        rack.To(10);
        _ = rack.Reading(Float);
        rack.Inject(FaultKind.FloatSlow, 1e6, fault => fault with { Sensor = rack.Site.SensorNamed(Float), Size = 5 });
        rack.Inject(FaultKind.ReservoirEmptied, 1, fault => fault with { Rack = new RackId(0), Size = 1000 });
        rack.To(14.9);
        Assert.Equal(1, rack.Reading(Float).Value);
        rack.To(15.1);
        Assert.Equal(0, rack.Reading(Float).Value);
    }

    [Fact]
    public void AChatteringFloatChangesAboutAsOftenAsItsSizeSays()
    {
        var rack = new TestSite(1);
        const string Float = "north/reservoir low float";
        rack.Inject(FaultKind.FloatChattering, 1e6, fault => fault with { Sensor = rack.Site.SensorNamed(Float), Size = 2 });
        var changes = 0;
        var last = rack.Reading(Float).Value;
        for (var step = 0; step < 10_000; step++)
        {
            rack.To(rack.Seconds + 0.1);
            var value = rack.Reading(Float).Value;
            changes += value != last ? 1 : 0;
            last = value;
        }

        Assert.InRange(changes, 400, 600);
    }

    private static TestSite Watched(SensorKind kind, int? tier)
    {
        var site = Sites.OneRack(1);
        var sensor = new Sensor
        {
            Id = new SensorId(site.Sensors.Length),
            Name = "extra",
            Kind = kind,
            Rack = kind == SensorKind.CircuitCurrent ? null : new RackId(0),
            TierNumber = tier,
            Circuit = kind == SensorKind.CircuitCurrent ? new CircuitId(0) : null,
            HeightMm = kind is SensorKind.TrayFullFloat or SensorKind.ReservoirFullFloat ? 30 : 0,
            PlausibleMin = 0,
            PlausibleMax = kind == SensorKind.LightLevel ? 70_000 : 1000,
            StaleAfter = Duration.FromSeconds(30),
        };
        return new TestSite(1, site: site with { Sensors = site.Sensors.Add(sensor) });
    }
}
