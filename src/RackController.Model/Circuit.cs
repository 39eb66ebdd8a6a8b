namespace RackController.Model;

/// <summary>
/// A branch circuit (breaker and outlet) that loads draw from. The controller budgets it; it does not replace the
/// breaker, and what a circuit may carry is for local codes and a licensed electrician to say.
/// </summary>
public sealed record Circuit
{
    /// <summary>Place in <see cref="Site.Circuits"/>.</summary>
    public required CircuitId Id { get; init; }

    /// <summary>What the grower calls it.</summary>
    public required string Name { get; init; }

    /// <summary>Supply voltage, in volts: 100 to 250.</summary>
    public required double VoltageV { get; init; }

    /// <summary>Rated current of the breaker, in amperes: 1 to 63.</summary>
    public required double BreakerA { get; init; }

    /// <summary>What the circuit may carry for hours, in amperes: 0.5 up to the breaker's rating. Default 80 % of
    /// the breaker: NEC 210.20(A) sizes a breaker at 125 % of the continuous load.</summary>
    public required double ContinuousLimitA { get; init; }

    /// <summary>The sensor that tells whether this circuit has its supply; null where none does.</summary>
    public SensorId? SupplySense { get; init; }

    /// <summary>Whether a contactor between the breaker and the relays can cut the whole circuit when a relay has welded. It is closed
    /// at rest and opened by its coil, so that a dead controller does not take the air away. Default no.</summary>
    public bool HasUpstreamContactor { get; init; }

    /// <summary>What its contactor is called: <c>cellar sockets/contactor</c>.</summary>
    public string ContactorName => $"{Name}/contactor";

    /// <summary>The share of a breaker's rating that a continuous load may use: 0.8, the reciprocal of 125 %.</summary>
    public const double ContinuousShare = 0.8;
}
