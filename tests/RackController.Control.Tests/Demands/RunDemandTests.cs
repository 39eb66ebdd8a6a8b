using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

public class RunDemandTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 6, 1, 1, 0);

    [Fact]
    public void ALoadThatRunsAlwaysIsOn()
    {
        var rig = new DemandRig(Sites.OneRack(), Start);
        rig.Run(Duration.FromDays(1));
        Assert.Equal(Demand.On(DemandCause.Always), rig["north/aerator"]);
        Assert.Single(rig.Comes("north/aerator", SwitchState.On));
    }

    [Fact]
    public void ACycleBeginsWithOnAndCountsMonotonicTime()
    {
        var rig = WithFan(fan => new RunInCycles(fan, Duration.FromMinutes(15), Duration.FromMinutes(45)));
        rig.Run(Duration.FromMinutes(30));
        rig.StepWall(Duration.FromHours(-5));
        rig.Run(Duration.FromMinutes(40));
        var back = Duration.FromHours(5);
        Assert.Equal([Start, Start - back + Duration.FromHours(1)], rig.Comes("north/fan", SwitchState.On));
        Assert.Equal([Start + Duration.FromMinutes(15)], rig.Comes("north/fan", SwitchState.Off));
    }

    [Fact]
    public void ACycleWithoutAPauseRunsAlways()
    {
        var rig = WithFan(fan => new RunInCycles(fan, Duration.FromMinutes(15), Duration.Zero));
        rig.Run(Duration.FromHours(1));
        Assert.Equal(Demand.On(DemandCause.Always), rig["north/fan"]);
    }

    [Fact]
    public void AReadingSwitchesWithHysteresis()
    {
        var states = new List<(double, SwitchState)>();
        var rig = ByAirTemperature(SwitchState.Off);
        foreach (var celsius in new[] { 24.0, 25.0, 25.1, 23.0, 22.0, 21.9, 24.0 })
        {
            rig.Facts.Know(AirSensor.Id, celsius);
            rig.Scan();
            states.Add((celsius, rig["north/fan"].State));
        }

        Assert.Equal(
            [
                (24.0, SwitchState.Off), (25.0, SwitchState.Off), (25.1, SwitchState.On), (23.0, SwitchState.On),
                (22.0, SwitchState.On), (21.9, SwitchState.Off), (24.0, SwitchState.Off),
            ],
            states);
    }

    [Theory]
    [InlineData(SwitchState.On)]
    [InlineData(SwitchState.Off)]
    public void WhileTheReadingIsUnknownTheLoadIsInItsSafeState(SwitchState safe)
    {
        var rig = ByAirTemperature(safe);
        rig.Facts.Know(AirSensor.Id, safe == SwitchState.On ? 10 : 40);
        rig.Scan();
        Assert.NotEqual(safe, rig["north/fan"].State);
        rig.Facts.Forget(AirSensor.Id);
        rig.Scan();
        Assert.Equal(new Demand(safe, DemandCause.ReadingUnknown, Instant.MinValue), rig["north/fan"]);
        rig.Facts.Know(AirSensor.Id, 23);
        rig.Scan();
        Assert.Equal(safe, rig["north/fan"].State);
    }

    private static Sensor AirSensor { get; } = new()
    {
        Id = new SensorId(Sites.OneRack().Sensors.Length),
        Name = "north/air temperature",
        Kind = SensorKind.AirTemperature,
        Rack = new RackId(0),
        PlausibleMin = -10,
        PlausibleMax = 60,
        StaleAfter = Duration.FromSeconds(30),
    };

    private static DemandRig ByAirTemperature(SwitchState safe)
    {
        var site = Sites.OneRack();
        var fan = site.Loads.Single(load => load.Kind == LoadKind.Fan);
        site = site with
        {
            Sensors = site.Sensors.Add(AirSensor),
            Loads = site.Loads.Replace(fan, fan with { SafeState = safe }),
        };
        return new DemandRig(Planned(site, new RunByReading(fan.Id, AirSensor.Id, OnAbove: 25, OffBelow: 22)), Start);
    }

    private static DemandRig WithFan(Func<LoadId, RunPlan> plan)
    {
        var site = Sites.OneRack();
        return new DemandRig(Planned(site, plan(site.LoadNamed("north/fan"))), Start);
    }

    private static Site Planned(Site site, RunPlan plan) =>
        site.WithSchedule(schedule => schedule with { Runs = schedule.Runs.SetItem(1, plan) });
}
