using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Runs one day of 24 hours on the simulated racks, from midnight to midnight, and measures what it takes. Warmth and moisture
/// settle in minutes and media begin full, so a day before it would change little (a test holds that to a few per cent).</summary>
internal static class DayTrial
{
    /// <summary>What the day takes.</summary>
    /// <param name="site">The site as it stands on that day.</param>
    /// <param name="date">A day.</param>
    /// <param name="terms">The solution.</param>
    public static DayUse Run(Site site, LocalDate date, ForecastTerms terms)
    {
        var found = PlantStart.Default with { ConductivityMsPerCm = terms.TargetMsPerCm, TopUpMsPerCm = terms.TapMsPerCm };
        var run = new VirtualRun(site, date.AtStartOfDayInZone(site.Zone).ToInstant(), [], found, profile: null);
        var lowestL = site.Racks.Select(rack => run.Plant.Racks[rack.Id.Index].ReservoirVolumeL).ToArray();
        var morningL = lowestL.ToArray();
        var peakA = new double[site.Circuits.Length];
        run.Begin();
        do
        {
            foreach (var rack in site.Racks)
            {
                lowestL[rack.Id.Index] = Math.Min(lowestL[rack.Id.Index], run.Now.ReservoirL(rack.Id));
            }

            foreach (var circuit in site.Circuits)
            {
                peakA[circuit.Id.Index] = Math.Max(peakA[circuit.Id.Index], run.Now.CircuitA(circuit.Id));
            }
        }
        while (run.Step(MonotonicTime.Zero + Duration.FromDays(1)));

        return new DayUse(
            [
                .. run.Plant.Racks.Select((rack, index) =>
                    new RackDayUse(rack.WaterUsedL, rack.CropSaltsG, morningL[index] - lowestL[index])),
            ],
            EnergyKWh(run, site, isLight: true), EnergyKWh(run, site, isLight: false), [.. peakA]);
    }

    private static double EnergyKWh(VirtualRun run, Site site, bool isLight) => site.Loads
        .Where(load => load.Kind == LoadKind.Light == isLight).Sum(load => run.Plant.Loads[load.Id.Index].EnergyKWh);
}
