using RackController.Model;

namespace RackController.RackFile.Building;

/// <summary>Between which values a reading can be true. A reading outside is a broken sensor, not a measurement.</summary>
internal static class PlausibleRange
{
    /// <summary>Water deeper than the brim would already be on the floor; more is a broken sensor.</summary>
    private const double AboveBrimMm = 30;

    // Nothing flows backwards, but a sensor scatters round zero: several times what data sheets of such sensors allow, from memory.
    private const double BelowNoCurrentA = 0.2;
    private const double BelowNoFlowLpm = 5;

    // Sunshine reads no more on such a part: 65535 counts of 1 / 1.2 lx (data sheet of the BH1750, from memory).
    private const double BrightestLux = 70_000;

    /// <summary>The range of a sensor at a rack.</summary>
    /// <param name="kind">What it measures.</param>
    /// <param name="rack">Where it does.</param>
    /// <param name="tier">The tier it looks at, for a sensor of a tier.</param>
    /// <param name="pumpStartA">What the pump draws in its first moments, A; for good when it has seized.</param>
    public static (double Min, double Max) AtRack(SensorKind kind, Rack rack, Tier? tier, double pumpStartA) => kind switch
    {
        SensorKind.ReservoirLevel => (0, rack.Reservoir.DepthMm + AboveBrimMm),
        SensorKind.TrayLevel => (0, tier!.Tray.RimDepthMm + AboveBrimMm),
        SensorKind.PumpCurrent => (-BelowNoCurrentA, 2 * pumpStartA),
        SensorKind.PumpFlow => (-BelowNoFlowLpm, 1.2 * rack.Pump.Curve.MaxFlowLpm),
        SensorKind.WaterTemperature => (0, 45),
        SensorKind.AirTemperature => (-10, 60),
        SensorKind.AirHumidity => (1, 100),
        SensorKind.LightLevel => (0, Math.Max(BrightestLux, 2 * tier!.LitLux)),
        _ when kind.IsContact() => (0, 1),
        _ => throw new InvariantBrokenException($"every sensor at a rack has its range, {kind} too"),
    };

    /// <summary>The range of a sensor at a circuit; a start or a fault may well exceed the breaker's rating.</summary>
    /// <param name="kind">What it measures.</param>
    /// <param name="breakerA">Rated current of the breaker, A.</param>
    public static (double Min, double Max) AtCircuit(SensorKind kind, double breakerA) =>
        kind == SensorKind.CircuitCurrent ? (-BelowNoCurrentA, 10 * breakerA) : (0, 1);
}
