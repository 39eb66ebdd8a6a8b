using RackController.Model;

namespace RackController.Growing;

/// <summary>
/// What a rack puts on the floor, empty and with everything in it: reservoir at its normal volume and every place with a grown tray. A
/// flood lifts water and adds none. It is the mean over the floor that the rack stands over; a rack stands on wheels, and whether a floor
/// carries it is for a structural engineer to say.
/// </summary>
/// <param name="EmptyKg">Without water and crops, kg.</param>
/// <param name="LoadedKg">With them, kg.</param>
/// <param name="AreaM2">The floor that it stands over, m2.</param>
/// <param name="Wheels">On how many wheels.</param>
/// <param name="IsGuessed">Whether the rack file does not say, so that weight and floor are guessed from tiers and trays.</param>
public sealed record FloorLoad(double EmptyKg, double LoadedKg, double AreaM2, int Wheels, bool IsGuessed)
{
    /// <summary>What floors of rooms to live in are commonly built for, kPa: 40 psf, the uniform live load of IRC table R301.5 for rooms
    /// other than sleeping rooms. It is for a whole floor, not for four wheels.</summary>
    public const double DwellingKPa = 40 * KPaPerPsf;

    // A pound-force on a square foot: 0.45359237 kg, 9.80665 m/s2 and 0.3048 m, each exact by definition.
    private const double KPaPerPsf = 0.45359237 * StandardGravity / (0.3048 * 0.3048) / 1000;
    private const double StandardGravity = 9.80665;

    // Common practice, no source: a wire frame with pump and tank, and a shelf with its flood tray and lamp.
    private const double FrameKg = 20;
    private const double TierKg = 14;
    private const double KgPerL = 1;

    /// <summary>Empty, kPa, which is kN/m2.</summary>
    public double EmptyKPa => KPa(EmptyKg);

    /// <summary>Loaded, kPa, which is kN/m2.</summary>
    public double LoadedKPa => KPa(LoadedKg);

    /// <summary>Loaded, pounds-force on a square foot.</summary>
    public double LoadedPsf => LoadedKPa / KPaPerPsf;

    /// <summary>Whether it is more than floors of dwellings are commonly built for.</summary>
    public bool IsMoreThanADwelling => LoadedKPa > DwellingKPa;

    /// <summary>What each wheel carries when all carry alike, kg; on an uneven floor three carry all.</summary>
    public double PerWheelKg => LoadedKg / Wheels;

    /// <summary>What a rack puts on the floor.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="trayKg">What a wet insert tray with a grown crop weighs, kg.</param>
    public static FloorLoad Of(Rack rack, double trayKg)
    {
        ArgumentNullException.ThrowIfNull(rack);

        // The inside of a tray is less than the outside of a rack: guessed so, the load errs to the heavy side.
        var stand = rack.Stand ?? new RackStand(
            FrameKg + TierKg * rack.Tiers.Length, rack.Tiers.Max(tier => tier.Tray.LengthMm),
            rack.Tiers.Max(tier => tier.Tray.WidthMm), 4);
        var inItKg = rack.Reservoir.NormalVolumeL * KgPerL + rack.Tiers.Sum(tier => tier.Tray.Contents.InsertTrays) * trayKg;
        return new FloorLoad(stand.EmptyKg, stand.EmptyKg + inItKg, stand.AreaM2, stand.Wheels, rack.Stand is null);
    }

    private double KPa(double kg) => kg * StandardGravity / AreaM2 / 1000;
}
