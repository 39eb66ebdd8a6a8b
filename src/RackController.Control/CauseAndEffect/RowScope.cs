namespace RackController.Control;

/// <summary>What a row of the cause-and-effect table can stand at.</summary>
public enum RowScope
{
    /// <summary>Every rack, or some of its tiers.</summary>
    Rack,

    /// <summary>Every circuit.</summary>
    Circuit,

    /// <summary>Every rack and every circuit.</summary>
    RackAndCircuit,

    /// <summary>Every sensor.</summary>
    Sensor,

    /// <summary>The controller itself.</summary>
    Controller,
}
