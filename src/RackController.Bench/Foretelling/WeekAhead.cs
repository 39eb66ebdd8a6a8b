using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What a week comes to if nothing goes wrong: floods, light, water, electricity, and whatever trips all the same. For whoever is
/// about to change a rack file.</summary>
/// <param name="Tiers">Every tier, rack by rack, bottom first.</param>
/// <param name="Racks">Every rack.</param>
/// <param name="Circuits">Every circuit.</param>
/// <param name="Trips">How often each interlock acted that tells a person of it.</param>
/// <param name="Alarms">How often each alarm was raised.</param>
/// <param name="Hazards">Every hazard that showed.</param>
public sealed record WeekAhead(
    ImmutableArray<TierAhead> Tiers, ImmutableArray<RackAhead> Racks, ImmutableArray<CircuitAhead> Circuits,
    ImmutableArray<Tally> Trips, ImmutableArray<Tally> Alarms, ImmutableArray<Hazard> Hazards)
{
    /// <summary>How many days it looks ahead.</summary>
    public const int Days = 7;

    /// <summary>Runs the controller on the simulated racks of a site, through a week that begins with the next day.</summary>
    /// <param name="site">The site; where its relays are does not matter.</param>
    /// <param name="now">The present time.</param>
    /// <param name="progress">Told now and then which share is done.</param>
    public static WeekAhead Of(Site site, Instant now, Action<double> progress)
    {
        ArgumentNullException.ThrowIfNull(site);
        var result = ScenarioRun.Run(
            new Scenario
            {
                Name = "week ahead",
                About = "",
                File = "",
                RackFile = "",
                Site = site,
                Start = now.InZone(site.Zone).Date.PlusDays(1).AtStartOfDayInZone(site.Zone).ToInstant(),
                Length = Duration.FromDays(Days),
                Events = [],
                Expectations = [],
                Accepts = [],
            },
            progress);
        return new WeekAhead(
            [.. result.Racks.SelectMany(rack => rack.TierLights.Select(light => new TierAhead(
                $"{site[rack.Rack].Name}, tier {light.TierNumber}", light.HoursPerDay ?? 0, light.DailyMolPerM2 ?? 0)))],
            [.. result.Racks.Zip(result.FloodTotals, (rack, floods) => new RackAhead(
                site[rack.Rack].Name, (double)floods.Count / Days, rack.WaterUsedL, rack.SpilledL, rack.Reservoir.LowestL))],
            [.. result.Circuits.Select(circuit => new CircuitAhead(site[circuit.Circuit].Name, circuit.EnergyKWh, circuit.PeakA))],
            result.Trips, result.Alarms, result.Hazards);
    }
}

/// <summary>The light of one tier.</summary>
/// <param name="Name">Its rack and number.</param>
/// <param name="LitHoursPerDay">Lit hours on an average day.</param>
/// <param name="DailyMolPerM2">Daily light integral, mol/m2.</param>
public sealed record TierAhead(string Name, double LitHoursPerDay, double DailyMolPerM2);

/// <summary>The water of one rack.</summary>
/// <param name="Name">Its name.</param>
/// <param name="FloodsPerDay">Floods on an average day.</param>
/// <param name="WaterUsedL">Evaporated and transpired in the week, L.</param>
/// <param name="SpilledL">Lost onto the floor in the week, L.</param>
/// <param name="LowestReservoirL">The least that was in the reservoir, L, which nobody topped up.</param>
public sealed record RackAhead(string Name, double FloodsPerDay, double WaterUsedL, double SpilledL, double LowestReservoirL);

/// <summary>The electricity of one circuit.</summary>
/// <param name="Name">Its name.</param>
/// <param name="EnergyKWh">Drawn in the week, kWh.</param>
/// <param name="PeakA">The most that it carried, A, inrush left out.</param>
public sealed record CircuitAhead(string Name, double EnergyKWh, double PeakA);
