namespace RackController.Model;

/// <summary>What a rack weighs and how it stands on the floor.</summary>
/// <param name="EmptyKg">Frame, shelves, lamps, flood trays, pump and tank without water and crops, kg: 5 to 2000.</param>
/// <param name="LengthMm">Length of the floor that it stands over, outside measure, mm: 100 to 5000.</param>
/// <param name="WidthMm">Width of it, mm: 100 to 5000.</param>
/// <param name="Wheels">On how many wheels or feet it stands: 3 to 12. Default 4.</param>
public sealed record RackStand(double EmptyKg, double LengthMm, double WidthMm, int Wheels)
{
    /// <summary>The floor that it stands over, m2.</summary>
    public double AreaM2 => LengthMm * WidthMm / 1e6;
}
