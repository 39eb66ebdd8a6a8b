namespace RackController.Plant;

/// <summary>What a breaker is in, and what put it there.</summary>
public enum BreakerState
{
    /// <summary>Closed.</summary>
    Closed,

    /// <summary>Opened by too much current for too long.</summary>
    TrippedByOverload,

    /// <summary>Opened at once by a very high current.</summary>
    TrippedByShortCircuit,

    /// <summary>Opened by a fault current to earth.</summary>
    TrippedByGroundFault,
}
