namespace RackController.Plant;

/// <summary>Where each part of a rack's state stands: water in m3, temperatures in degrees Celsius.</summary>
/// <param name="Tiers">How many tiers the rack has.</param>
internal readonly record struct RackLayout(int Tiers)
{
    /// <summary>Free water in the reservoir.</summary>
    public int Reservoir => 3 * Tiers;

    /// <summary>Water that fills the supply pipes.</summary>
    public int Pipes => Reservoir + 1;

    /// <summary>All that ever ran onto the floor.</summary>
    public int Spilled => Reservoir + 2;

    /// <summary>All that ever left the reservoir as vapour.</summary>
    public int Evaporated => Reservoir + 3;

    /// <summary>All that the crop ever gave off.</summary>
    public int Transpired => Reservoir + 4;

    /// <summary>All that passed the pump, less what ran back. It counts a flow, it is no store.</summary>
    public int Pumped => Reservoir + 5;

    /// <summary>Temperature of the reservoir's water.</summary>
    public int WaterC => Reservoir + 6;

    /// <summary>Length of the state.</summary>
    public int Length => Reservoir + 7;

    /// <summary>Free water in a tray.</summary>
    /// <param name="index">Tier, from 0.</param>
    public static int Tray(int index) => index;

    /// <summary>Water held by the media of a tray.</summary>
    /// <param name="index">Tier, from 0.</param>
    public int Media(int index) => Tiers + index;

    /// <summary>Air temperature of a tier.</summary>
    /// <param name="index">Tier, from 0.</param>
    public int AirC(int index) => 2 * Tiers + index;
}
