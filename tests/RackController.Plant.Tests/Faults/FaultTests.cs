using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

public class FaultTests
{
    private const string LowFloat = "north/reservoir low float";
    private static readonly RackId North = new(0);

    [Fact]
    public void TheCatalogueSaysWhatEveryKindNeeds()
    {
        Assert.Equal(Enum.GetValues<FaultKind>(), FaultCatalogue.Entries.Select(entry => entry.Kind));
        Assert.All(FaultCatalogue.Entries, entry => Assert.Equal(entry.SizeUnit.Length == 0, entry.SizeMax == 0));
    }

    [Fact]
    public void AFaultThatDoesNotFitTheSiteIsRefusedWithTheReason()
    {
        var rack = new TestSite(2);
        var pump = rack.Site.LoadNamed("north/pump");
        Fault Soon(FaultKind kind) => new(kind, rack.Now, rack.After(1));
        Assert.Contains("tiers", Refused(rack, Soon(FaultKind.TrayLeak) with { Rack = North, TierNumber = 3, Size = 1 }));
        Assert.Contains("load", Refused(rack, Soon(FaultKind.RelayWelded)));
        Assert.Contains("size 2", Refused(rack, Soon(FaultKind.ScreenClogged) with { Rack = North, Size = 2 }));
        Assert.Contains("ends", Refused(rack, new Fault(FaultKind.RelayOpen, rack.After(5), rack.After(5)) { Load = pump }));
        Assert.Contains("measures", Refused(rack, Soon(FaultKind.SensorNoise) with
        {
            Sensor = rack.Site.SensorNamed(LowFloat),
            Size = 1,
        }));
    }

    [Fact]
    public void AFaultActsFromItsBeginningToItsEnd()
    {
        var rack = new TestSite(1);
        rack.Plant.Inject(new Fault(FaultKind.FloatStuckDry, rack.After(10), rack.After(20))
        {
            Sensor = rack.Site.SensorNamed(LowFloat),
        });
        rack.To(9.9);
        Assert.Equal(1, rack.Reading(LowFloat).Value);
        rack.Plant.AdvanceToNews(rack.After(100));
        Assert.Equal(10, rack.Seconds);
        Assert.Equal(0, rack.Reading(LowFloat).Value);
        rack.To(20);
        Assert.Equal(1, rack.Reading(LowFloat).Value);
    }

    [Fact]
    public void AHandMovesAFloatAndLetsItGo()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.MovedDry, 10, fault => fault with { Sensor = rack.Site.SensorNamed(LowFloat) });
        rack.To(5);
        Assert.Equal(0, rack.Reading(LowFloat).Value);
        rack.To(10);
        Assert.Equal(1, rack.Reading(LowFloat).Value);
    }

    [Theory]
    [InlineData(FaultKind.FloatStuckWet, 1)]
    [InlineData(FaultKind.FloatStuckDry, 0)]
    [InlineData(FaultKind.SensorFrozen, 1)]
    public void AHandMovesNoFloatThatIsStuck(FaultKind kind, double reads)
    {
        var rack = new TestSite(1);
        rack.Inject(kind, 100, fault => fault with { Sensor = rack.Site.SensorNamed(LowFloat) });
        rack.Inject(FaultKind.MovedDry, 10, fault => fault with { Sensor = rack.Site.SensorNamed(LowFloat) });
        rack.To(5);
        Assert.Equal(reads, rack.Reading(LowFloat).Value);
        rack.Inject(FaultKind.MovedWet, 10, fault => fault with { Sensor = rack.Site.SensorNamed(LowFloat) });
        rack.To(8);
        Assert.Equal(reads, rack.Reading(LowFloat).Value);
    }

    [Fact]
    public void ASlowFloatFollowsAHandLate()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.FloatSlow, 100, fault => fault with { Sensor = rack.Site.SensorNamed(LowFloat), Size = 6 });
        rack.Inject(FaultKind.MovedDry, 10, fault => fault with { Sensor = rack.Site.SensorNamed(LowFloat) });
        rack.To(5);
        Assert.Equal(1, rack.Reading(LowFloat).Value);
        rack.To(7);
        Assert.Equal(0, rack.Reading(LowFloat).Value);
    }

    [Fact]
    public void AWeldedRelayRunsItsLoadWhateverItIsTold()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.RelayWelded, 100, fault => fault with { Load = rack.Site.LoadNamed("north/pump") });
        rack.Stop();
        Assert.True(rack.Load("north/pump").Powered);
        Assert.False(rack.Load("north/pump").Commanded);
        rack.To(100);
        Assert.False(rack.Load("north/pump").Powered);
    }

    [Fact]
    public void AnOpenRelayNeverRunsItsLoad()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.RelayOpen, 100, fault => fault with { Load = rack.Site.LoadNamed("north/pump") });
        rack.Flood();
        rack.To(50);
        Assert.Equal(0, rack.Truth.PumpedL);
    }

    [Theory]
    [InlineData(FaultKind.ScreenClogged, 0.95)]
    [InlineData(FaultKind.PumpWorn, 0.3)]
    public void AWeakSupplyGivesLess(FaultKind kind, double size)
    {
        var sound = new TestSite(3);
        var weak = new TestSite(3);
        weak.Inject(kind, 1e6, fault => fault with { Rack = North, Size = size });
        sound.Flood();
        weak.Flood();
        Assert.InRange(weak.Truth.PumpFlowLpm, 0.1, 0.8 * sound.Truth.PumpFlowLpm);
    }

    [Fact]
    public void ASeizedPumpDrawsCurrentAndLiftsNothing()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.PumpSeized, 1e6, fault => fault with { Rack = North });
        rack.Flood();
        rack.To(60);
        Assert.True(rack.Load("north/pump").CurrentA > 0);
        Assert.False(rack.Truth.PumpTurns);
        Assert.Equal(0, rack.Truth.PumpedL);
    }

    [Fact]
    public void ABlockedWeepKeepsWaterInItsTray()
    {
        var rack = new TestSite(2);
        rack.Inject(FaultKind.WeepBlocked, 1e6, fault => fault with { Rack = North, TierNumber = 2 });
        rack.Flood();
        rack.To(600);
        rack.Stop();
        rack.To(4000);
        Assert.InRange(rack.Truth.Tiers[0].DepthMm, 0, 0.1);
        Assert.InRange(rack.Truth.Tiers[1].DepthMm, 44, 46);
    }

    [Fact]
    public void ALeakingTrayWetsTheRope()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.TrayLeak, 1e6, fault => fault with { Rack = North, TierNumber = 1, Size = 0.5 });
        rack.Flood();
        rack.To(120);
        Assert.InRange(rack.Truth.SpilledL, 0.9, 1.0);
        Assert.Equal(1, rack.Reading("north/leak rope").Value);
    }

    [Fact]
    public void AnOutageTakesEveryLoadOfTheCircuitAndComesBack()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.SupplyOutage, 60, fault => fault with { Circuit = new CircuitId(0) });
        Assert.False(rack.Load("north/fan").Powered);
        Assert.Equal(0, rack.Reading("sockets/supply sense").Value);
        rack.To(60);
        Assert.True(rack.Load("north/fan").Powered);
    }

    [Theory]
    [InlineData(FaultKind.BreakerTrip, BreakerState.TrippedByOverload)]
    [InlineData(FaultKind.GroundFaultTrip, BreakerState.TrippedByGroundFault)]
    public void ATripLastsUntilSomebodyClosesTheBreaker(FaultKind kind, BreakerState state)
    {
        var rack = new TestSite(1);
        rack.Inject(kind, 60, fault => fault with { Circuit = new CircuitId(0) });
        Assert.Equal(state, rack.Plant.Circuits[0].Breaker);
        rack.To(60);
        Assert.Equal(BreakerState.Closed, rack.Plant.Circuits[0].Breaker);
    }

    [Fact]
    public void AReservoirCanBeEmptiedAndFilledAndOverfilled()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.ReservoirEmptied, 1, fault => fault with { Rack = North, Size = 1000 });
        Assert.Equal(0, rack.Truth.ReservoirVolumeL, 1e-9);
        Assert.Equal(0, rack.Reading(LowFloat).Value);
        rack.Inject(FaultKind.ReservoirRefilled, 1, fault => fault with { Rack = North, Size = 170 });
        Assert.Equal(160, rack.Truth.ReservoirVolumeL, 1e-9);
        Assert.Equal(10, rack.Truth.SpilledL, 1e-9);
        Assert.Equal(30, rack.Truth.BroughtL, 1e-9);
    }

    [Fact]
    public void InputsAndRelaysThatDoNotAnswerSaySo()
    {
        var rack = new TestSite(1);
        rack.Inject(FaultKind.ReadFails, 10, fault => fault);
        rack.Inject(FaultKind.WriteFails, 10, fault => fault);
        rack.Commands[rack.Site.LoadNamed("north/pump")] = SwitchState.On;
        Assert.False(rack.Plant.Read(rack.Now, rack.Readings).IsOk);
        Assert.False(rack.Plant.Write(rack.Now, rack.Commands).IsOk);
        Assert.False(rack.Load("north/pump").Powered);
        rack.To(10);
        Assert.True(rack.Plant.Read(rack.Now, rack.Readings).IsOk);
        Assert.True(rack.Plant.Write(rack.Now, rack.Commands).IsOk);
        Assert.True(rack.Load("north/pump").Powered);
    }

    [Fact]
    public void FaultsCombineAndEndEachByItself()
    {
        var rack = new TestSite(1);
        var pump = rack.Site.LoadNamed("north/pump");
        rack.Plant.Inject(new Fault(FaultKind.RelayWelded, rack.Now, rack.After(100)) { Load = pump });
        rack.Plant.Inject(new Fault(FaultKind.SupplyOutage, rack.After(10), rack.After(20)) { Circuit = new CircuitId(0) });
        rack.Plant.Inject(new Fault(FaultKind.PumpSeized, rack.After(15), rack.After(30)) { Rack = North });
        rack.Switch("north/tier 1 valve", on: true);
        Assert.True(rack.Truth.PumpTurns);
        rack.To(12);
        Assert.False(rack.Truth.PumpTurns);
        rack.To(25);
        Assert.True(rack.Load("north/pump").Powered);
        Assert.False(rack.Truth.PumpTurns);
        rack.To(40);
        Assert.True(rack.Truth.PumpTurns);
        rack.To(101);
        Assert.False(rack.Load("north/pump").Powered);
    }

    private static string Refused(TestSite rack, Fault fault) =>
        Assert.Throws<ArgumentException>(() => rack.Plant.Inject(fault)).Message;
}
