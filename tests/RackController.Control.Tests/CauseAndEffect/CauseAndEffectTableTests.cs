using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests;

public sealed class CauseAndEffectTableTests
{
    private static readonly Site site = Sites.ManyRacks(3, racksToACircuit: 2);

    [Fact]
    public void ARowStandsWhereItsScopeSays()
    {
        foreach (var at in CauseAndEffectTable.At(site))
        {
            Assert.All(at.Stands, stand => Assert.True(
                at.Row.Scope switch
                {
                    RowScope.Rack => stand.Rack is not null,
                    RowScope.Circuit => stand.Circuit is not null,
                    RowScope.Sensor or RowScope.RackAndCircuit => stand.Rack is not null || stand.Circuit is not null,
                    _ => stand is { Rack: null, Circuit: null },
                },
                $"{at.Row.Id} stands at {stand.Place}, which is no {at.Row.Scope}"));
        }
    }

    [Fact]
    public void ARackThatLosesItsLowFloatLosesTheRowAndNoOther()
    {
        var lowFloat = site.SensorNamed("rack 2/reservoir low float");
        var without = site with
        {
            Sensors = site.Sensors.SetItem(
                lowFloat.Index, site.Sensors[lowFloat.Index] with { Kind = SensorKind.WaterTemperature, PlausibleMax = 50 }),
        };
        var lost = CauseAndEffectTable.At(without).Zip(CauseAndEffectTable.At(site))
            .Where(pair => !pair.First.Lacking.SequenceEqual(pair.Second.Lacking))
            .ToDictionary(pair => pair.First.Row.Id, pair => pair.First.Lacking.Except(pair.Second.Lacking).ToArray());
        Assert.Equal(["rack 2"], lost["low-float"]);
        Assert.DoesNotContain(lost, row => row.Key != "low-float" && row.Value.Length > 0);
    }

    [Fact]
    public void ACircuitRowActsOnEverythingThatDrawsFromIt()
    {
        var supply = CauseAndEffectTable.At(site).Single(at => at.Row.Id == "supply-lost");
        Assert.Equal(["sockets 1", "sockets 2"], supply.Stands.Select(stand => stand.Place));
        Assert.All(supply.Stands, stand => Assert.Equal(
            site.Loads.Where(load => load.Circuit == stand.Circuit).Select(load => load.Id), stand.Loads));
    }

    [Fact]
    public void TheLimitsOfTheRackFileAreNamed()
    {
        var limits = site.WithLimits(each => each with { PumpMaximumRun = NodaTime.Duration.FromMinutes(7), MaximumRunsToLatch = 4 });
        var row = CauseAndEffectTable.At(limits).Single(at => at.Row.Id == "pump-maximum-run");
        Assert.Equal(
            ["7 min; 4 times in 24 h latch", "15 min; 3 times in 24 h latch", "15 min; 3 times in 24 h latch"],
            row.Stands.Select(stand => stand.Settings));
    }
}
