namespace RackController.Control;

/// <summary>What an event of the kind <see cref="EventKind.Flood"/> may say in <see cref="ControlEvent.What"/>. Its subject is
/// the name of the rack.</summary>
public static class FloodEvent
{
    /// <summary>A flood is due and waits for the pump.</summary>
    public const string Due = "due";

    /// <summary>A flood that came due is served by the one that waits or is under way.</summary>
    public const string Merged = "merged";

    /// <summary>A flood that came due does not happen.</summary>
    public const string LeftOut = "left out";

    /// <summary>The pump runs and the trays fill: the flood has started.</summary>
    public const string Filling = "filling";

    /// <summary>A fill took as long as it may and not every tray read full.</summary>
    public const string FillLimit = "fill limit";

    /// <summary>The water is held at depth.</summary>
    public const string Soaking = "soaking";

    /// <summary>The pump was told off before the flood was over. Draining follows.</summary>
    public const string CutShort = "cut short";

    /// <summary>The pump is off and the trays drain.</summary>
    public const string Draining = "draining";

    /// <summary>The trays have had their time to drain: the flood is over.</summary>
    public const string Drained = "drained";
}
