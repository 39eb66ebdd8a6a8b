namespace RackController.Plant;

/// <summary>Whether a breaker is closed, and if not, what opened it.</summary>
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
