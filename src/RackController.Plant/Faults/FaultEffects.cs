using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Lets the faults that act have their effect. Everything that a fault can touch is set anew from what it is without faults, so
/// any number of them combine and end cleanly, whatever their order.
/// </summary>
internal sealed class FaultEffects
{
    private readonly SimulatedRack[] racks;
    private readonly SiteElectrics electrics;

    public FaultEffects(SimulatedRack[] racks, SiteElectrics electrics)
    {
        this.racks = racks;
        this.electrics = electrics;
    }

    /// <summary>Whether inputs cannot be read.</summary>
    public bool ReadFails { get; private set; }

    /// <summary>Whether relays do not take commands.</summary>
    public bool WriteFails { get; private set; }

    /// <summary>What happens once, as a fault begins or ends.</summary>
    public void Turn(Fault fault, bool begins)
    {
        switch (fault.Kind)
        {
            case FaultKind.ReservoirEmptied when begins:
                racks[fault.Rack!.Value.Index].Bring(-fault.Size / Litres.PerM3);
                break;
            case FaultKind.ReservoirRefilled when begins:
                racks[fault.Rack!.Value.Index].Bring(fault.Size / Litres.PerM3);
                break;
            case FaultKind.FloorMopped when begins:
                racks[fault.Rack!.Value.Index].Mop();
                break;
            case FaultKind.FloatCutoutReset when begins:
                racks[fault.Rack!.Value.Index].Cutout!.Reset();
                break;
            case FaultKind.BreakerClosed when begins:
                electrics.Circuits[fault.Circuit!.Value.Index].Close();
                break;
            case FaultKind.BreakerTrip or FaultKind.GroundFaultTrip:
                TurnBreaker(electrics.Circuits[fault.Circuit!.Value.Index], fault.Kind, begins);
                break;
        }
    }

    /// <summary>Sets anew everything that lasts.</summary>
    public void Apply(FaultSchedule schedule)
    {
        Clear();
        for (var index = 0; index < schedule.Count; index++)
        {
            if (schedule.Acting(index) is { } fault)
            {
                Apply(fault);
            }
        }
    }

    private static void TurnBreaker(CircuitElectrics circuit, FaultKind kind, bool begins)
    {
        if (begins)
        {
            circuit.Trip(kind == FaultKind.GroundFaultTrip
                ? BreakerState.TrippedByGroundFault
                : BreakerState.TrippedByOverload);
        }
        else
        {
            circuit.Close();
        }
    }

    private void Clear()
    {
        ReadFails = false;
        WriteFails = false;
        foreach (var circuit in electrics.Circuits)
        {
            circuit.MainsShare = 1;
            circuit.Disturb();
            circuit.Contactor.IsWelded = false;
        }

        foreach (var load in electrics.Loads)
        {
            load.Faults.Clear();
        }

        foreach (var rack in racks)
        {
            rack.PumpSpeedKept = 1;
            rack.AirStoneBlocked = false;
            rack.Inputs.StackOpenShare = 1;
            Array.Fill(rack.Inputs.StandpipeOpenShare, 1);
            Array.Clear(rack.ValveHeld);
            rack.Inputs.ScreenLossK = 0;
            Array.Clear(rack.Inputs.WeepBlocked);
            Array.Clear(rack.Inputs.LeakM3PerS);
            rack.Inputs.HoseLossShare = 0;
            if (rack.Cutout is { } cutout)
            {
                cutout.IsStuck = false;
                cutout.IsHeldUp = false;
                cutout.DoesNotLatch = false;
            }
        }
    }

    private void Apply(Fault fault)
    {
        switch (FaultCatalogue.Entry(fault.Kind).Place)
        {
            case FaultPlace.Site:
                ReadFails |= fault.Kind == FaultKind.ReadFails;
                WriteFails |= fault.Kind == FaultKind.WriteFails;
                break;
            case FaultPlace.Rack or FaultPlace.Tier or FaultPlace.FloatCutout or FaultPlace.TimeCutout:
                ApplyToRack(fault, racks[fault.Rack!.Value.Index]);
                break;
            case FaultPlace.Circuit:
                ApplyToCircuit(fault, electrics.Circuits[fault.Circuit!.Value.Index]);
                break;
            case FaultPlace.Valve:
                HoldValve(electrics.Loads[fault.Load!.Value.Index].Load, fault.Kind == FaultKind.ValveStuckOpen);
                break;
            case FaultPlace.Load or FaultPlace.Motor:
                ApplyToLoad(fault, electrics.Loads[fault.Load!.Value.Index].Faults);
                break;
        }
    }

    private static void ApplyToCircuit(Fault fault, CircuitElectrics circuit)
    {
        switch (fault.Kind)
        {
            case FaultKind.SupplyOutage:
                circuit.MainsShare = 0;
                break;
            case FaultKind.BrownOut:
                circuit.MainsShare = Math.Min(circuit.MainsShare, fault.Size);
                break;
            case FaultKind.ContactorWelded:
                circuit.Contactor.IsWelded = true;
                break;
        }
    }

    private static void ApplyToLoad(Fault fault, LoadFaults load)
    {
        switch (fault.Kind)
        {
            case FaultKind.EarthLeakage:
                load.LeakMilliA += fault.Size;
                break;
            case FaultKind.RelayChattering:
                load.RelayChatters = Duration.FromSeconds(fault.Size);
                break;
            case FaultKind.RelaySluggish:
                load.RelayLate = Duration.Max(load.RelayLate, Duration.FromSeconds(fault.Size));
                break;
            case FaultKind.LoadDead:
                load.IsDead = true;
                break;
            case FaultKind.MotorSeized:
                load.HeldFast = true;
                break;
            default:
                load.ContactHeld = fault.Kind == FaultKind.RelayWelded;
                break;
        }
    }

    private void HoldValve(Load valve, bool open) => racks[valve.Rack.Index].ValveHeld[valve.TierNumber!.Value - 1] = open;

    private static void ApplyToRack(Fault fault, SimulatedRack rack)
    {
        var inputs = rack.Inputs;
        var tier = (fault.TierNumber ?? 1) - 1;
        switch (fault.Kind)
        {
            case FaultKind.ScreenClogged:
                inputs.ScreenLossK = Math.Max(inputs.ScreenLossK, RackPipes.ScreenLossK(fault.Size));
                break;
            case FaultKind.PumpWorn:
                rack.PumpSpeedKept = Math.Min(rack.PumpSpeedKept, 1 - fault.Size);
                break;
            case FaultKind.PumpSeized:
                rack.Pump.Faults.HeldFast = true;
                break;
            case FaultKind.AirStoneBlocked:
                rack.AirStoneBlocked = true;
                break;
            case FaultKind.StandpipeBlocked:
                inputs.StandpipeOpenShare[tier] = Math.Min(inputs.StandpipeOpenShare[tier], 1 - fault.Size);
                break;
            case FaultKind.DrainStackBlocked:
                inputs.StackOpenShare = Math.Min(inputs.StackOpenShare, 1 - fault.Size);
                break;
            case FaultKind.HoseLoose:
                inputs.HoseLossShare = Math.Max(inputs.HoseLossShare, fault.Size);
                break;
            case FaultKind.FloatCutoutStuck:
                rack.Cutout!.IsStuck = true;
                break;
            case FaultKind.FloatCutoutUnlatched:
                rack.Cutout!.DoesNotLatch = true;
                break;
            case FaultKind.FloatCutoutLifted:
                rack.Cutout!.IsHeldUp = true;
                break;
            case FaultKind.TimeCutoutStuck:
                rack.Pump.Faults.TimeRelayHangs = true;
                break;
            case FaultKind.TimeCutoutTurned:
                rack.Pump.Faults.TimeRelayAfter = Duration.FromSeconds(fault.Size);
                break;
            case FaultKind.WeepBlocked:
                inputs.WeepBlocked[tier] = true;
                break;
            case FaultKind.TrayLeak:
                inputs.LeakM3PerS[tier] += fault.Size / Litres.PerMinutePerM3PerS;
                break;
        }
    }
}
