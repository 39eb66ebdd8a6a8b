namespace RackController.Plant;

/// <summary>Where each part of a rack's state stands: water in m3, temperatures in degrees Celsius, vapour pressures in kPa, salts
/// and oxygen in g.</summary>
/// <param name="Tiers">How many tiers the rack has.</param>
internal readonly record struct RackLayout(int Tiers)
{
    /// <summary>Free water in the reservoir.</summary>
    public int Reservoir => 6 * Tiers;

    /// <summary>Water that fills the supply pipes.</summary>
    public int Pipes => Reservoir + 1;

    /// <summary>All that ever ran where no water belongs: into the drip tray and onto the floor.</summary>
    public int Spilled => Reservoir + 2;

    /// <summary>All that ever left free water as vapour.</summary>
    public int Evaporated => Reservoir + 3;

    /// <summary>All that the crop ever gave off.</summary>
    public int Transpired => Reservoir + 4;

    /// <summary>All that passed the pump, less what ran back. It counts a flow, it is no store.</summary>
    public int Pumped => Reservoir + 5;

    /// <summary>Temperature of the free water, in the reservoir and in the trays.</summary>
    public int WaterC => Reservoir + 6;

    /// <summary>Oxygen dissolved in the reservoir.</summary>
    public int Oxygen => Reservoir + 7;

    /// <summary>Salts in the reservoir.</summary>
    public int Salts => Reservoir + 8;

    /// <summary>Salts in the water that fills the supply pipes.</summary>
    public int PipeSalts => Reservoir + 9;

    /// <summary>All salts that ran there with it.</summary>
    public int SpilledSalts => Reservoir + 10;

    /// <summary>All salts that the crop ever took up.</summary>
    public int CropSalts => Reservoir + 11;

    /// <summary>Temperature of the room.</summary>
    public int RoomC => Reservoir + 12;

    /// <summary>Vapour pressure of the room.</summary>
    public int RoomVapourKPa => Reservoir + 13;

    /// <summary>Length of the state.</summary>
    public int Length => Reservoir + 14;

    /// <summary>Free water in a tray.</summary>
    /// <param name="index">Tier, from 0.</param>
    public static int Tray(int index) => index;

    /// <summary>Water held by the media of a tray.</summary>
    /// <param name="index">Tier, from 0.</param>
    public int Media(int index) => Tiers + index;

    /// <summary>Air temperature of a tier.</summary>
    /// <param name="index">Tier, from 0.</param>
    public int AirC(int index) => 2 * Tiers + index;

    /// <summary>Vapour pressure of a tier's air.</summary>
    /// <param name="index">Tier, from 0.</param>
    public int VapourKPa(int index) => 3 * Tiers + index;

    /// <summary>Salts in the free water of a tray.</summary>
    /// <param name="index">Tier, from 0.</param>
    public int TraySalts(int index) => 4 * Tiers + index;

    /// <summary>Salts in the water held by the media of a tray.</summary>
    /// <param name="index">Tier, from 0.</param>
    public int MediaSalts(int index) => 5 * Tiers + index;
}
