using CsCheck;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

/// <summary>What holds of currents and energy whatever is switched, sinks, leaks and trips.</summary>
public class EnergyTests
{
    private const int LengthS = 4000;
    private const int Look = -1;
    private const int Off = 0;
    private const int On = 1;

    // A load is told to be off or on, or a fault begins: where, and how large.
    private sealed record Happening(double AtS, int Kind, int Place, double Share);

    private static Gen<Happening[]> Happenings =>
        Gen.Select(Gen.Double[0, LengthS], Gen.Int[0, 6], Gen.Int[0, 1000], Gen.Double[0, 1])
            .Select(drawn => new Happening(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4))
            .Array[1, 30].Select(all => all.OrderBy(one => one.AtS).ToArray());

    [Fact]
    public void TheLoadsOfACircuitDrewWhatTheCircuitDrew() => Happenings.Sample(
        all =>
        {
            var rack = Run(all, [], BreakerEdge.Slow);
            var circuitKWh = rack.Plant.Circuits[0].EnergyKWh;
            Assert.Equal(circuitKWh, rack.Plant.Loads.Sum(load => load.EnergyKWh), 1e-12);
        },
        iter: 100);

    [Fact]
    public void WhatFlowsAndTripsDoesNotDependOnWhenAnybodyLooks() => Gen.Select(
        Happenings, Gen.Double[0, LengthS].Array[0, 200].Select(looks => looks.Order().ToArray())).Sample(
        (all, looks) =>
        {
            var (looked, left) = (Run(all, looks, BreakerEdge.Slow).Plant, Run(all, [], BreakerEdge.Slow).Plant);
            Assert.Equal(left.Circuits[0].Breaker, looked.Circuits[0].Breaker);
            Assert.Equal(left.Circuits[0].CurrentA, looked.Circuits[0].CurrentA);
            Assert.Equal(left.Circuits[0].EnergyKWh, looked.Circuits[0].EnergyKWh);
            Assert.Equal(left.Loads.Select(load => load.EnergyKWh), looked.Loads.Select(load => load.EnergyKWh));
        },
        iter: 60);

    private static TestSite Run(Happening[] all, double[] looks, BreakerEdge edge)
    {
        var site = Sites.OneRack(2);
        site = site with
        {
            Loads = [.. site.Loads.Select(load => load with { PowerW = 8 * load.PowerW, InrushMultiple = 5, PowerFactor = 0.8 })],
        };
        var rack = new TestSite(2, PlantStart.Default with { Breakers = edge }, site);
        foreach (var fault in all.Where(one => one.Kind > On))
        {
            rack.Plant.Inject(FaultOf(site, fault));
        }

        var told = all.Where(one => one.Kind is Off or On).Concat(looks.Select(at => new Happening(at, Look, 0, 0)));
        foreach (var step in told.OrderBy(one => one.AtS))
        {
            rack.To(step.AtS);
            if (step.Kind != Look)
            {
                rack.Switch(site.Loads[step.Place % site.Loads.Length].Name, on: step.Kind == On);
            }
        }

        rack.To(LengthS);
        return rack;
    }

    private static Fault FaultOf(Site site, Happening happening)
    {
        var from = new MonotonicTime((long)(happening.AtS * 1e9));
        var kind = ((FaultKind[])
        [
            FaultKind.BrownOut, FaultKind.SupplyOutage, FaultKind.EarthLeakage, FaultKind.RelayWelded, FaultKind.BreakerClosed,
        ])[happening.Kind - 2];
        return new Fault(kind, from, from + NodaTime.Duration.FromSeconds(1 + 600 * happening.Share))
        {
            Circuit = new CircuitId(0),
            Load = new LoadId(happening.Place % site.Loads.Length),
            Size = kind == FaultKind.BrownOut ? happening.Share : kind == FaultKind.EarthLeakage ? 10 * happening.Share : 0,
        };
    }
}
