namespace RackController.Bench;

/// <summary>A part that acts without the controller.</summary>
public enum WiredBackstop
{
    /// <summary>The float in the pump's own wire.</summary>
    FloatCutout,

    /// <summary>The time relay in the pump's own wire.</summary>
    TimeCutout,

    /// <summary>A circuit's breaker, by overload or short circuit.</summary>
    Breaker,

    /// <summary>A circuit's ground-fault protection.</summary>
    GroundFaultProtection,
}

/// <summary>How backstops are called.</summary>
public static class WiredBackstops
{
    /// <summary>In words.</summary>
    /// <param name="backstop">Which.</param>
    public static string Words(this WiredBackstop backstop) => backstop switch
    {
        WiredBackstop.FloatCutout => "the float in the pump's own wire",
        WiredBackstop.TimeCutout => "the time relay in the pump's own wire",
        WiredBackstop.Breaker => "the breaker",
        WiredBackstop.GroundFaultProtection => "the ground-fault protection",
        _ => throw new Model.InvariantBrokenException($"every backstop has its words, {backstop} too"),
    };
}
