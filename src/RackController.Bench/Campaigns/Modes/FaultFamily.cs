namespace RackController.Bench;

/// <summary>What sort of part fails in a <see cref="FaultMode"/>.</summary>
public enum FaultFamily
{
    /// <summary>Floats, leak ropes and supply senses: contacts that read 0 or 1.</summary>
    Contacts,

    /// <summary>Sensors that measure a value.</summary>
    Measuring,

    /// <summary>Relays and contactors.</summary>
    Relays,

    /// <summary>Pump, light, fan, aerator and valve themselves.</summary>
    Loads,

    /// <summary>Pipes, trays, drains and the reservoir.</summary>
    Waterways,

    /// <summary>Outlets, breakers and the grid.</summary>
    Supply,

    /// <summary>The controller's board, its inputs and outputs.</summary>
    Board,

    /// <summary>The board's wall clock.</summary>
    Clock,
}
