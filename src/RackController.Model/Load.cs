namespace RackController.Model;

/// <summary>What a load does for the crop, which decides how it is scheduled and in what order it is shed.</summary>
public enum LoadKind
{
    /// <summary>Lifts water from the reservoir to the trays.</summary>
    Pump,

    /// <summary>Admits water from the supply riser to one tier.</summary>
    Valve,

    /// <summary>Lights one tier.</summary>
    Light,

    /// <summary>Moves air.</summary>
    Fan,

    /// <summary>Keeps the reservoir's water alive.</summary>
    Aerator,
}

/// <summary>Whether a load is powered. This is what the load gets, not what the relay coil gets.</summary>
public enum SwitchState
{
    /// <summary>Not powered.</summary>
    Off,

    /// <summary>Powered.</summary>
    On,
}

/// <summary>Through which contact of its relay a load is wired.</summary>
public enum RelayContact
{
    /// <summary>Powered while the coil is energised: a dead controller leaves the load off.</summary>
    NormallyOpen,

    /// <summary>Powered while the coil is at rest: a dead controller leaves the load on.</summary>
    NormallyClosed,
}

/// <summary>Anything that one relay switches.</summary>
public sealed record Load
{
    /// <summary>Place in <see cref="Site.Loads"/>.</summary>
    public required LoadId Id { get; init; }

    /// <summary>Unique on the site, for people: <c>north/pump</c>, <c>north/tier 2 light</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What it does.</summary>
    public required LoadKind Kind { get; init; }

    /// <summary>The rack it belongs to.</summary>
    public required RackId Rack { get; init; }

    /// <summary>The tier it serves, 1 at the bottom; null when it serves the whole rack.</summary>
    public int? TierNumber { get; init; }

    /// <summary>The circuit it draws from.</summary>
    public required CircuitId Circuit { get; init; }

    /// <summary>Real power by its nameplate, in watts, above 0. A nameplate that states a current is converted at the
    /// circuit's voltage.</summary>
    public required double PowerW { get; init; }

    /// <summary>Real power over apparent power: 0.1 to 1. A rack file that does not say takes the usual one of its kind: 0.6
    /// for pump, fan and aerator, 0.95 for a light, 1 for a valve.</summary>
    public double PowerFactor { get; init; } = 1.0;

    /// <summary>Current in the first moments after switching on, as a multiple of the running current: 1
    /// to 150. A rack file that does not say takes the usual one of its kind: 6 for the pump, 5 for fan and aerator, 40 for a
    /// light, 1 for a valve.</summary>
    public double InrushMultiple { get; init; } = 1.0;

    /// <summary>Who is shed last when a circuit cannot carry everything, and returns first after an outage: 1 is most
    /// important, 9 least. Defaults: aerator 1, fan 2, valve and pump 3, light 5.</summary>
    public required int Priority { get; init; }

    /// <summary>The state that hurts least when the controller cannot judge. Default on for fan and aerator, off for the rest;
    /// never on for pump and valve.</summary>
    public required SwitchState SafeState { get; init; }

    /// <summary>Through which contact of its relay it is wired. Default: the one that leaves it in its safe state when the
    /// controller is dead.</summary>
    public required RelayContact Contact { get; init; }

    /// <summary>How often its relay may switch on and off before it counts as worn: 100 to 100 million. Default 100,000, what general
    /// purpose relays are made for at their rated load (common practice, no source).</summary>
    public int RatedOperations { get; init; } = 100_000;

    /// <summary>Running current, in amperes, on a supply of this voltage: I = P / (U cos phi).</summary>
    /// <param name="voltageV">Supply voltage, in volts, above 0.</param>
    public double CurrentA(double voltageV) => PowerW / (voltageV * PowerFactor);
}
