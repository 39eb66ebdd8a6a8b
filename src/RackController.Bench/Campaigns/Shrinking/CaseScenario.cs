using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>A failed case as a scenario: its faults, what a person did afterwards, and the expectation that it does not meet.</summary>
internal static class CaseScenario
{
    private static readonly Duration minute = Duration.FromMinutes(1);

    /// <summary>Makes it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="failed">The failure.</param>
    /// <param name="name">What to call it.</param>
    /// <param name="rackFile">The rack file, as seen from where the scenario will lie.</param>
    /// <param name="foundBy">The command that found it.</param>
    public static Scenario Of(Site site, CaseOutcome failed, string name, string rackFile, string foundBy)
    {
        var drawn = failed.Case;
        var length = LengthOf(failed);
        return new Scenario
        {
            Name = name,
            About = $"{Words(failed)} Found by {foundBy}, and shrunk from there.",
            File = $"{name}.yaml",
            RackFile = rackFile,
            Site = site,
            Start = drawn.Start,
            Length = length,
            Found = PlantStart.Default with { Breakers = drawn.Breakers },
            Events =
            [
                .. drawn.Events.Concat(failed.Deeds).OrderBy(happening => happening.At)
                    .Where(happening => happening.At < length || happening is RackMends or ControllerComes),
            ],
            Expectations = Expected(site, failed),
            Accepts = [],
        };
    }

    private static string Words(CaseOutcome failed)
    {
        var faults = string.Join(" and ", failed.Case.Faults.Select(fault => fault.Name));
        return $"{char.ToUpperInvariant(faults[0])}{faults[1..]}: {failed.Seen}.";
    }

    // A hazard needs no more of the run than led there, and a rack that is stuck no more than it was given.
    private static Duration LengthOf(CaseOutcome failed)
    {
        var needed = failed.Class switch
        {
            FailureClass.Hazard => failed.Hazards[0].Elapsed + minute,
            FailureClass.Stuck => failed.DueAgain + minute,
            _ => failed.Length,
        };
        return minute * Math.Ceiling(needed / minute);
    }

    private static ImmutableArray<Expectation> Expected(Site site, CaseOutcome failed) => failed.Class switch
    {
        FailureClass.Hazard => [.. failed.Hazards.Take(1).Select(hazard => Against(site, hazard))],
        FailureClass.Stuck =>
        [
            new Recovers(
                "it floods again within its schedule, and nothing is left to be done", 0, Always,
                failed.DueAgain - failed.Case.AllOver, new Happens(failed.Case.Events[^1].Name)),
        ],
        FailureClass.Silent =>
        [
            new Within(
                "somebody is told", 0, Always, LengthOf(failed) - minute, new Happens(Happens.Start), new AlarmIs(AlarmIs.Any, null)),
        ],
        _ => [new Within("the controller goes on", 0, Always, minute, new Happens(Happens.Start), new ControllerRuns(true))],
    };

    private static Window Always { get; } = new(Duration.Zero, Duration.MaxValue);

    private static Never Against(Site site, Hazard hazard) =>
        new($"no hazard: {HazardWords.Title(hazard.Kind)}", 0, Always, Shown(site, hazard), Condition(site, hazard));

    private static Statement Shown(Site site, Hazard hazard) => hazard.Kind switch
    {
        HazardKind.WaterOnTheFloor => new Measures(new Spilled(RackOf(site, hazard).Id), new Above(WaterOnTheFloor.ToleratedL)),
        HazardKind.PumpPastItsMaximumRun => new Measures(
            new UnbrokenRun(LoadOf(site, hazard).Id), new Above(RackOf(site, hazard).Limits.PumpMaximumRun.TotalMinutes + 0.1)),
        HazardKind.PumpRunsDry => new Measures(
            new UnbrokenRun(LoadOf(site, hazard).Id), new Above(PumpRunsDry.Limit.TotalMinutes)),
        HazardKind.CircuitOverloaded => new Measures(
            new CircuitCurrent(CircuitOf(site, hazard).Id), new Above(CircuitOf(site, hazard).ContinuousLimitA)),
        HazardKind.LightsInTheHeat => new LoadIsPowered(LoadOf(site, hazard).Id, true),
        _ => throw new InvariantBrokenException($"every hazard has its statement, {hazard.Kind} too"),
    };

    private static Measures? Condition(Site site, Hazard hazard) => hazard.Kind switch
    {
        HazardKind.PumpRunsDry => new Measures(
            new ReservoirVolume(RackOf(site, hazard).Id),
            new Below(RackOf(site, hazard).Reservoir.PumpIntakeMm * RackOf(site, hazard).Reservoir.AreaM2)),
        HazardKind.LightsInTheHeat => new Measures(
            new AirTemperature(LoadOf(site, hazard).Rack, LoadOf(site, hazard).TierNumber ?? 1),
            new Above(RackOf(site, hazard).Limits.AirHotC)),
        _ => null,
    };

    private static Load LoadOf(Site site, Hazard hazard) => site.Loads.First(load => load.Name == hazard.Where);

    private static Circuit CircuitOf(Site site, Hazard hazard) => site.Circuits.First(circuit => circuit.Name == hazard.Where);

    private static Rack RackOf(Site site, Hazard hazard) => site.Racks.FirstOrDefault(rack => rack.Name == hazard.Where)
        ?? site[LoadOf(site, hazard).Rack];
}
