namespace RackController.Plant;

/// <summary>Which end of what their standards allow the breakers and the ground-fault protection of a simulated site sit at. Real
/// ones lie between; a rule that holds should hold at both.</summary>
public enum BreakerEdge
{
    /// <summary>They open as early as they may.</summary>
    Fast,

    /// <summary>They open as late as they may.</summary>
    Slow,
}
