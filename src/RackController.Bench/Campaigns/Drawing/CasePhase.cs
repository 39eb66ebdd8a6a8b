namespace RackController.Bench;

/// <summary>Where in a flood cycle and in the day a case strikes. Begins and ends are phases of their own: that is where timers,
/// relays and water change hands.</summary>
public enum CasePhase
{
    /// <summary>Lit, no flood under way.</summary>
    Idle,

    /// <summary>Within two seconds of a fill's beginning.</summary>
    FillBegins,

    /// <summary>While the pump fills.</summary>
    Filling,

    /// <summary>Within two seconds of a soak's beginning.</summary>
    SoakBegins,

    /// <summary>While the water is held at depth.</summary>
    Soaking,

    /// <summary>Within two seconds of the pump's end.</summary>
    DrainBegins,

    /// <summary>While the trays empty.</summary>
    Draining,

    /// <summary>Within two seconds of the end of a flood cycle.</summary>
    CycleEnds,

    /// <summary>Dark, no flood under way.</summary>
    Dark,

    /// <summary>Within two seconds of the first light coming on.</summary>
    LightsOn,

    /// <summary>Within two seconds of the last light going off.</summary>
    LightsOff,
}

/// <summary>How phases are called.</summary>
public static class CasePhases
{
    /// <summary>In words: <c>fill begins</c>.</summary>
    /// <param name="phase">The phase.</param>
    public static string Words(this CasePhase phase) => phase switch
    {
        CasePhase.Idle => "idle",
        CasePhase.FillBegins => "fill begins",
        CasePhase.Filling => "filling",
        CasePhase.SoakBegins => "soak begins",
        CasePhase.Soaking => "soaking",
        CasePhase.DrainBegins => "drain begins",
        CasePhase.Draining => "draining",
        CasePhase.CycleEnds => "cycle ends",
        CasePhase.Dark => "dark",
        CasePhase.LightsOn => "lights on",
        CasePhase.LightsOff => "lights off",
        _ => throw new Model.InvariantBrokenException($"every phase has its words, {phase} too"),
    };
}
