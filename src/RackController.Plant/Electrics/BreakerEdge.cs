namespace RackController.Plant;

/// <summary>Which end of what its standard allows a simulated breaker sits at. Real ones lie between; a rule that holds
/// should hold at both.</summary>
public enum BreakerEdge
{
    /// <summary>Trips as early as a breaker may.</summary>
    Fast,

    /// <summary>Trips as late as a breaker may.</summary>
    Slow,
}
