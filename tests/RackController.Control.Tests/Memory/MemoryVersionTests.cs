using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests;

/// <summary>What must not be lost in a power cut says so in the scan in which it happens. Random stories hold all of memory to it
/// (<see cref="RememberedTests"/>).</summary>
public class MemoryVersionTests
{
    private static readonly RackId north = new(0);
    private readonly Rig rig = new(Sites.OneRack());

    [Fact]
    public void ASteadyScanHasNothingToSay()
    {
        rig.ScanFor(Duration.FromSeconds(10));
        AssertSaid(rig, 0, () => rig.ScanFor(Duration.FromSeconds(2)));
    }

    [Fact]
    public void ALatchIsSaidWhenItCatchesAndWhenItIsReset()
    {
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Set("north/leak rope", 1);

        // The latch and its alarm.
        AssertSaid(rig, 2, () => rig.ScanFor(Duration.FromSeconds(2)));
        rig.Set("north/leak rope", 0);
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Scan(new Acknowledge("Ada", "north/high-water"));
        rig.Scan(new ResetLatch("Ada", "north/high-water"));
        AssertSaid(rig, 2, () => rig.Scan(new ConfirmReset("Ben", "north/high-water")));
    }

    [Fact]
    public void WhatPeopleAskForIsSaid()
    {
        rig.ScanFor(Duration.FromSeconds(5));
        AssertSaid(rig, 1, () => rig.Scan(new Stop("Ada", null)));
        AssertSaid(rig, 1, () => rig.Scan(new Resume("Ada", null)));
        AssertSaid(rig, 1, () => rig.Scan(new HoldForService("Ada", north, Duration.FromMinutes(10))));
        AssertSaid(rig, 1, () => rig.Scan(new EndServiceHold("Ada", north)));
        var version = rig.Control.MemoryVersion;
        rig.Scan(new SetTierInUse("Ada", north, 1, InUse: false));
        Assert.True(rig.Control.MemoryVersion > version);
        AssertSaid(rig, 0, () => rig.Scan(new SetTierInUse("Ada", north, 1, InUse: false)));
    }

    [Fact]
    public void ALossOfSupplyIsSaidAndSoIsItsReturn()
    {
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Set("sockets/supply sense", 0);

        // The loss and its alarm.
        AssertSaid(rig, 2, () => rig.ScanFor(Duration.FromSeconds(2)));
        AssertSaid(rig, 0, () => rig.ScanFor(Duration.FromSeconds(2)));
        rig.Set("sockets/supply sense", 1);
        AssertSaid(rig, 2, () => rig.ScanFor(Duration.FromSeconds(4)));
    }

    [Fact]
    public void ATripOfTheLowFloatIsSaid()
    {
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(30));
        rig.Set("north/reservoir low float", 0);
        rig.Scan();

        // The trip and its alarm; that the pump stops is seen by the scan after.
        AssertSaid(rig, 2, () => rig.Scan());
    }

    [Fact]
    public void ThatABudgetIsGrantedOnceMoreIsSaid()
    {
        var hourly = new Rig(Sites.OneRack()
            .WithLimits(limits => limits with { PumpDailyBudget = Duration.FromMinutes(5) }));
        hourly.LeapUntil(() => hourly.Alarm("north/pump-daily-budget") is not null);
        hourly.LeapFor(Duration.FromMinutes(1));

        // The grant, the acknowledgement, and that the alarm returns.
        AssertSaid(hourly, 3, () => hourly.Scan(new Acknowledge("Ada", "north/pump-daily-budget")));
    }

    [Fact]
    public void ThatACircuitIsFoundToCarryMoreIsSaid()
    {
        var circuit = new LiveCircuit(site => site with { Circuits = [site.Circuits[0] with { ContinuousLimitA = 2 }] });
        circuit.Rig.LeapUntil(() => circuit.Rig.IsOn("north/tier 2 light") && circuit.Rig.IsOn("north/tier 1 light"));
        circuit.Rig.LeapFor(Duration.FromMinutes(5));
        circuit.Now(() => circuit.Supply = 1.4);
        circuit.Rig.ScanFor(Duration.FromSeconds(9.8));

        // By how much, and two alarms: that of this row and that of what is shed.
        AssertSaid(circuit.Rig, 3, () => circuit.Rig.ScanFor(Duration.FromSeconds(0.4)));
    }

    private static void AssertSaid(Rig of, long times, Action when)
    {
        var before = of.Control.MemoryVersion;
        when();
        Assert.Equal(times, of.Control.MemoryVersion - before);
    }
}
