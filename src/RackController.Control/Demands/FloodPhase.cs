namespace RackController.Control;

/// <summary>Where a rack's flood cycle is.</summary>
public enum FloodPhase
{
    /// <summary>No flood is under way or due.</summary>
    Idle,

    /// <summary>A flood is due, but the pump may not start yet.</summary>
    Waiting,

    /// <summary>The pump fills the trays.</summary>
    Filling,

    /// <summary>The water is held at depth.</summary>
    Soaking,

    /// <summary>The pump is off and the trays empty.</summary>
    Draining,
}
