namespace RackController.Model;

/// <summary>Work by hand that keeps a rack well and comes round again and again. It is not repair, and no proof test: those look whether
/// something still works.</summary>
public enum UpkeepWork
{
    /// <summary>The screen at the pump's intake is rinsed.</summary>
    Screen,

    /// <summary>Riser and branches are flushed.</summary>
    Flush,

    /// <summary>The reservoir's water is changed.</summary>
    Reservoir,

    /// <summary>Floats are wiped, so that they move freely.</summary>
    Floats,

    /// <summary>Standpipes and weeps are cleared of roots and media.</summary>
    Standpipes,

    /// <summary>The pump is opened: impeller and intake are cleaned, its cable looked at.</summary>
    Pump,
}
