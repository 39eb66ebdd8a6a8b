using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

/// <summary>Faults of relays, loads, drains and measuring sensors, each by what it does to the rack.</summary>
public sealed class PartFaultTests
{
    private static readonly RackId North = new(0);

    [Fact]
    public void ASluggishRelayClosesLateAndOpensLate()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.RelaySluggish, 1e6, fault => fault with { Load = rack.Site.LoadNamed("north/pump"), Size = 7 });
        rack.Switch("north/pump", on: true);
        rack.To(6.9);
        Assert.False(rack.Load("north/pump").Powered);
        rack.To(7);
        Assert.True(rack.Load("north/pump").Powered);
        rack.Switch("north/pump", on: false);
        rack.To(13.9);
        Assert.True(rack.Load("north/pump").Powered);
        rack.To(14);
        Assert.False(rack.Load("north/pump").Powered);
    }

    [Fact]
    public void ASluggishRelayThatIsMendedDoesAtOnceWhatItWasTold()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.RelaySluggish, 5, fault => fault with { Load = rack.Site.LoadNamed("north/pump"), Size = 100 });
        rack.Switch("north/pump", on: true);
        Assert.False(rack.Load("north/pump").Powered);
        rack.To(5);
        Assert.True(rack.Load("north/pump").Powered);
    }

    [Fact]
    public void AChatteringRelayIsClosedAboutHalfTheTimeAndOpenWhileToldSo()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.RelayChattering, 1e6, fault => fault with { Load = rack.Site.LoadNamed("north/pump"), Size = 1 });
        rack.To(10);
        Assert.False(rack.Load("north/pump").RelayOn);
        rack.Switch("north/pump", on: true);
        var closed = Enumerable.Range(0, 2000).Count(step =>
        {
            rack.To(10 + step / 2.0);
            return rack.Load("north/pump").RelayOn;
        });

        // Each stretch is a fair coin: three standard deviations of 2000 tosses are 67.
        Assert.InRange(closed, 933, 1067);
        rack.Switch("north/pump", on: false);
        Assert.False(rack.Load("north/pump").RelayOn);
    }

    [Fact]
    public void AChatteringRelayDoesTheSameWhoeverLooks()
    {
        var (seldom, often) = (new TestSite(1), new TestSite(1));
        foreach (var rack in (TestSite[])[seldom, often])
        {
            rack.Inject(FaultKind.RelayChattering, 100, fault => fault with { Load = rack.Site.LoadNamed("north/pump"), Size = 0.7 });
            rack.Switch("north/pump", on: true);
        }

        for (var tenth = 1; tenth <= 1000; tenth++)
        {
            often.To(tenth / 10.0);
        }

        seldom.To(100);
        Assert.Equal(seldom.Truth.PumpedL, often.Truth.PumpedL);
        Assert.Equal(seldom.Load("north/pump").EnergyKWh, often.Load("north/pump").EnergyKWh);
    }

    [Fact]
    public void ADeadLoadDrawsNothingThoughItsRelayIsClosed()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.LoadDead, 1e6, fault => fault with { Load = rack.Site.LoadNamed("north/pump") });
        rack.Flood();
        rack.To(60);
        Assert.True(rack.Load("north/pump").RelayOn);
        Assert.Equal(0, rack.Load("north/pump").CurrentA);
        Assert.Equal(0, rack.Truth.PumpedL);
    }

    [Fact]
    public void ASeizedMotorDrawsItsStartingCurrentAndDoesNothing()
    {
        var rack = new TestSite(1);
        rack.Switch("north/fan", on: true);
        var runningA = rack.Load("north/fan").CurrentA;
        rack.Inject(FaultKind.MotorSeized, 1e6, fault => fault with { Load = rack.Site.LoadNamed("north/fan") });
        rack.To(60);
        Assert.True(rack.Load("north/fan").CurrentA >= runningA);
    }

    [Theory]
    [InlineData(FaultKind.ValveStuckOpen, false, true)]
    [InlineData(FaultKind.ValveStuckShut, true, false)]
    public void AStuckValveStaysAsItIsWhateverItsCoilDoes(FaultKind kind, bool told, bool isOpen)
    {
        var rack = new TestSite(1);
        rack.Inject(kind, 100, fault => fault with { Load = rack.Site.LoadNamed("north/tier 1 valve") });
        rack.Switch("north/tier 1 valve", told);
        Assert.Equal(isOpen, rack.Truth.Tiers[0].ValveOpen);
        rack.To(100);
        Assert.Equal(told, rack.Truth.Tiers[0].ValveOpen);
    }

    [Fact]
    public void OnlyAMotorSeizesAndOnlyAValveSticks()
    {
        var rack = new TestSite(1);
        var light = new Fault(FaultKind.MotorSeized, rack.Now, rack.After(1)) { Load = rack.Site.LoadNamed("north/tier 1 light") };
        Assert.Contains("motor", light.WrongFor(rack.Site)!, StringComparison.Ordinal);
        Assert.Contains("valve", (light with { Kind = FaultKind.ValveStuckOpen }).WrongFor(rack.Site)!, StringComparison.Ordinal);
    }

    [Fact]
    public void ABlockedStandpipeLetsTheTrayRiseAboveIt()
    {
        double DepthMm(double blockedShare)
        {
            var rack = new TestSite(1);
            rack.Inject(FaultKind.StandpipeBlocked, 1e6, fault => fault with { Rack = North, TierNumber = 1, Size = blockedShare });
            rack.Flood();
            rack.To(420);
            return rack.Truth.Tiers[0].DepthMm;
        }

        // A weir of half the length needs 2^(2/3) times the head for the same flow, an orifice of half the area 4 times.
        var standpipeMm = Sites.OneRack(1).Racks[0].Tiers[0].Tray.StandpipeHeightMm;
        Assert.InRange((DepthMm(0.5) - standpipeMm) / (DepthMm(0) - standpipeMm), Math.Pow(2, 2.0 / 3) - 0.05, 4.05);
        Assert.True(DepthMm(1) > DepthMm(0.5) + 10);
    }

    [Fact]
    public void ABlockedStackKeepsTheWaterInTheTrays()
    {
        var rack = new TestSite(2);
        rack.Flood();
        rack.To(300);
        rack.Stop();
        rack.Inject(FaultKind.DrainStackBlocked, 1000, fault => fault with { Rack = North, Size = 1 });
        var (low, high) = (rack.Truth.Tiers[0].DepthMm, rack.Truth.Tiers[1].DepthMm);
        rack.To(1200);
        Assert.InRange(rack.Truth.Tiers[0].DepthMm, low - 1, low + 1);
        Assert.InRange(rack.Truth.Tiers[1].DepthMm, high - 1, high + 1);
        rack.To(9000);
        Assert.InRange(rack.Truth.Tiers[1].DepthMm, 0, 0.1);
    }

    [Fact]
    public void ABlockedAirStoneBringsNoMoreOxygenThanADeadAerator()
    {
        double OxygenAfter(FaultKind? kind)
        {
            var rack = new TestSite(2);
            rack.Switch("north/aerator", on: true);
            if (kind is { } fault)
            {
                rack.Inject(fault, 1e6, made => made with { Rack = North, Load = rack.Site.LoadNamed("north/aerator") });
            }

            rack.To(86_400);
            return rack.Truth.DissolvedOxygenMgPerL;
        }

        var blocked = OxygenAfter(FaultKind.AirStoneBlocked);
        Assert.Equal(OxygenAfter(FaultKind.LoadDead), blocked, 1e-9);
        Assert.True(OxygenAfter(null) > blocked + 0.5);
    }

    [Fact]
    public void AnOffsetAddsToWhatASensorSaysAndABrokenWireSaysNothing()
    {
        var sensor = new Sensor
        {
            Id = new SensorId(4),
            Name = "north/water temperature",
            Kind = SensorKind.WaterTemperature,
            Rack = North,
            PlausibleMin = 0,
            PlausibleMax = 50,
            StaleAfter = NodaTime.Duration.FromSeconds(30),
        };
        var site = Sites.OneRack(1);
        var rack = new TestSite(1, site: site with { Sensors = site.Sensors.Add(sensor) });
        Assert.Equal(19, rack.Reading(sensor.Name).Value, 1e-6);
        rack.Inject(FaultKind.SensorOffset, 10, fault => fault with { Sensor = sensor.Id, Size = -12 });
        Assert.Equal(7, rack.Reading(sensor.Name).Value, 1e-6);
        rack.Inject(FaultKind.SensorReadsZero, 5, fault => fault with { Sensor = sensor.Id });
        Assert.Equal(0, rack.Reading(sensor.Name).Value);
        Assert.Equal(ReadingQuality.Good, rack.Reading(sensor.Name).Quality);
        rack.To(10);
        Assert.Equal(19, rack.Reading(sensor.Name).Value, 1e-2);
    }
}
