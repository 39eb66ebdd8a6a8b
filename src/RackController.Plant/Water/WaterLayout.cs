namespace RackController.Plant;

/// <summary>Where each store and each sum of water stands in the state of a rack: all in m3.</summary>
/// <param name="Tiers">How many tiers the rack has.</param>
internal readonly record struct WaterLayout(int Tiers)
{
    /// <summary>Free water in the reservoir.</summary>
    public int Reservoir => 2 * Tiers;

    /// <summary>All that ever ran onto the floor.</summary>
    public int Spilled => Reservoir + 1;

    /// <summary>All that ever left the reservoir as vapour.</summary>
    public int Evaporated => Reservoir + 2;

    /// <summary>All that the crop ever gave off.</summary>
    public int Transpired => Reservoir + 3;

    /// <summary>All that passed the pump, less what ran back. It counts a flow, it is no store.</summary>
    public int Pumped => Reservoir + 4;

    /// <summary>Length of the state.</summary>
    public int Length => Reservoir + 5;

    /// <summary>Free water in a tray.</summary>
    /// <param name="index">Tier, from 0.</param>
    public static int Tray(int index) => index;

    /// <summary>Water held by the media of a tray.</summary>
    /// <param name="index">Tier, from 0.</param>
    public int Media(int index) => Tiers + index;
}
