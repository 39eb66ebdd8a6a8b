using System.Collections.Immutable;

namespace RackController.Growing;

/// <summary>What a day of a site takes, with the trays that stand there and the lamps as they are set. Whoever makes a forecast is told
/// this, by measurement or by a simulated site, and counts on.</summary>
/// <param name="Racks">What each rack takes, by its place on the site.</param>
/// <param name="LightsKWh">What lamps draw, kWh.</param>
/// <param name="OthersKWh">What all else draws, kWh.</param>
/// <param name="PeakA">The most that each circuit carries, A, starting currents left out; by its place on the site.</param>
public sealed record DayUse(ImmutableArray<RackDayUse> Racks, double LightsKWh, double OthersKWh, ImmutableArray<double> PeakA);

/// <summary>What a day takes of the water of one rack.</summary>
/// <param name="WaterL">Transpired and evaporated, L.</param>
/// <param name="CropSaltsG">Salts that crops take up from a solution of the target conductivity, g.</param>
/// <param name="DrawnDownL">How far the reservoir is drawn down at its lowest, below where it stood in the morning, L: floods lend, and
/// crops keep.</param>
public sealed record RackDayUse(double WaterL, double CropSaltsG, double DrawnDownL);
