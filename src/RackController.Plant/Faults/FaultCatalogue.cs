using System.Collections.Immutable;

namespace RackController.Plant;

/// <summary>Every kind of fault that can be injected, with its place and the bounds of its size. Read by whoever writes or
/// draws faults; <see cref="Fault"/> is checked against it.</summary>
public static class FaultCatalogue
{
    /// <summary>The entries, one per <see cref="FaultKind"/>, in its order.</summary>
    public static ImmutableArray<FaultEntry> Entries { get; } =
    [
        new(FaultKind.FloatStuckWet, FaultPlace.Contact, "", 0, 0, ""),
        new(FaultKind.FloatStuckDry, FaultPlace.Contact, "", 0, 0, ""),
        new(FaultKind.FloatSlow, FaultPlace.Contact, "s", 0, 3600, "how late it follows"),
        new(FaultKind.FloatChattering, FaultPlace.Contact, "s", 0.1, 60, "mean time between changes"),
        new(FaultKind.SensorNoise, FaultPlace.MeasuringSensor, "unit of the sensor", 0, 1e6, "standard deviation"),
        new(FaultKind.SensorDrift, FaultPlace.MeasuringSensor, "unit of the sensor per hour", -1e6, 1e6, "rate"),
        new(FaultKind.SensorOffset, FaultPlace.MeasuringSensor, "unit of the sensor", -1e6, 1e6, "how far it is off"),
        new(FaultKind.SensorReadsZero, FaultPlace.MeasuringSensor, "", 0, 0, ""),
        new(FaultKind.SensorDropout, FaultPlace.Sensor, "", 0, 0, ""),
        new(FaultKind.SensorFrozen, FaultPlace.Sensor, "", 0, 0, ""),
        new(FaultKind.SensorCorrupt, FaultPlace.Sensor, "", 0, 0, ""),
        new(FaultKind.RelayWelded, FaultPlace.Load, "", 0, 0, ""),
        new(FaultKind.RelayOpen, FaultPlace.Load, "", 0, 0, ""),
        new(FaultKind.RelayChattering, FaultPlace.Load, "s", 0.2, 60, "mean time between changes"),
        new(FaultKind.RelaySluggish, FaultPlace.Load, "s", 0, 600, "how late it follows"),
        new(FaultKind.LoadDead, FaultPlace.Load, "", 0, 0, ""),
        new(FaultKind.MotorSeized, FaultPlace.Motor, "", 0, 0, ""),
        new(FaultKind.ValveStuckOpen, FaultPlace.Valve, "", 0, 0, ""),
        new(FaultKind.ValveStuckShut, FaultPlace.Valve, "", 0, 0, ""),
        new(FaultKind.AirStoneBlocked, FaultPlace.Rack, "", 0, 0, ""),
        new(FaultKind.ContactorWelded, FaultPlace.Circuit, "", 0, 0, ""),
        new(FaultKind.EarthLeakage, FaultPlace.Load, "mA", 0, 500, "what leaks at full voltage"),
        new(FaultKind.ScreenClogged, FaultPlace.Rack, "share", 0, 1, "share of the screen that is clogged"),
        new(FaultKind.PumpWorn, FaultPlace.Rack, "share", 0, 0.95, "share of its speed that it lost"),
        new(FaultKind.PumpSeized, FaultPlace.Rack, "", 0, 0, ""),
        new(FaultKind.WeepBlocked, FaultPlace.Tier, "", 0, 0, ""),
        new(FaultKind.StandpipeBlocked, FaultPlace.Tier, "share", 0, 1, "share of the pipe that is blocked"),
        new(FaultKind.DrainStackBlocked, FaultPlace.Rack, "share", 0, 1, "share of the stack that is blocked"),
        new(FaultKind.TrayLeak, FaultPlace.Tier, "L/min", 0, 60, "leak while the tray holds water"),
        new(FaultKind.HoseLoose, FaultPlace.Rack, "share", 0, 1, "share of the pump's flow that is spilled"),
        new(FaultKind.ReservoirEmptied, FaultPlace.Rack, "L", 0, 10_000, "water that leaves"),
        new(FaultKind.ReservoirRefilled, FaultPlace.Rack, "L", 0, 10_000, "water that comes"),
        new(FaultKind.FloorMopped, FaultPlace.Rack, "", 0, 0, ""),
        new(FaultKind.FloatCutoutStuck, FaultPlace.FloatCutout, "", 0, 0, ""),
        new(FaultKind.FloatCutoutUnlatched, FaultPlace.FloatCutout, "", 0, 0, ""),
        new(FaultKind.FloatCutoutLifted, FaultPlace.FloatCutout, "", 0, 0, ""),
        new(FaultKind.FloatCutoutReset, FaultPlace.FloatCutout, "", 0, 0, ""),
        new(FaultKind.TimeCutoutStuck, FaultPlace.TimeCutout, "", 0, 0, ""),
        new(FaultKind.TimeCutoutTurned, FaultPlace.TimeCutout, "s", 1, 86_400, "after what time it opens"),
        new(FaultKind.MovedWet, FaultPlace.Contact, "", 0, 0, ""),
        new(FaultKind.MovedDry, FaultPlace.Contact, "", 0, 0, ""),
        new(FaultKind.SupplyOutage, FaultPlace.Circuit, "", 0, 0, ""),
        new(FaultKind.BrownOut, FaultPlace.Circuit, "share", 0, 1, "share of the voltage that is left"),
        new(FaultKind.BreakerTrip, FaultPlace.Circuit, "", 0, 0, ""),
        new(FaultKind.GroundFaultTrip, FaultPlace.Circuit, "", 0, 0, ""),
        new(FaultKind.BreakerClosed, FaultPlace.Circuit, "", 0, 0, ""),
        new(FaultKind.ReadFails, FaultPlace.Site, "", 0, 0, ""),
        new(FaultKind.WriteFails, FaultPlace.Site, "", 0, 0, ""),
    ];

    /// <summary>What may be said of a kind.</summary>
    /// <param name="kind">The kind.</param>
    public static FaultEntry Entry(FaultKind kind) => Entries[(int)kind];
}
