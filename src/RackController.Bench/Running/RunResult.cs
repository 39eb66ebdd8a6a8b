using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>All that a run of a scenario came to. The same scenario always comes to the same.</summary>
public sealed record RunResult
{
    private readonly Lazy<ImmutableArray<FloodAdvice>> floodAdvice;

    internal RunResult(RunCharts charts)
    {
        Charts = charts;
        floodAdvice = new(() =>
        [
            .. Scenario!.Site.Racks.Where(rack => rack.Schedule.Floods.Times is not NoFloods)
                .Select(rack => RackController.Bench.FloodAdvice.Of(Scenario.Site, rack)),
        ]);
    }

    /// <summary>The scenario.</summary>
    public required Scenario Scenario { get; init; }

    /// <summary>What became of each expectation, in the order of the scenario.</summary>
    public required ImmutableArray<Verdict> Verdicts { get; init; }

    /// <summary>Every hazard that showed.</summary>
    public required ImmutableArray<Hazard> Hazards { get; init; }

    /// <summary>Every flood, in order, rack by rack; of a run of years only the newest of them.</summary>
    public required ImmutableArray<FloodRecord> Floods { get; init; }

    /// <summary>What all floods of each rack came to.</summary>
    public required ImmutableArray<FloodTotals> FloodTotals { get; init; }

    /// <summary>Water and light of each rack.</summary>
    public required ImmutableArray<RackTotals> Racks { get; init; }

    /// <summary>What each load did.</summary>
    public required ImmutableArray<LoadTotals> Loads { get; init; }

    /// <summary>What each circuit gave.</summary>
    public required ImmutableArray<CircuitTotals> Circuits { get; init; }

    /// <summary>How often each interlock acted that tells a person of it.</summary>
    public required ImmutableArray<Tally> Trips { get; init; }

    /// <summary>How often each alarm was raised.</summary>
    public required ImmutableArray<Tally> Alarms { get; init; }

    /// <summary>Everything that happened, in order; of a run of years only the newest of it.</summary>
    public required IReadOnlyList<LogEntry> Log { get; init; }

    /// <summary>What is left of what happened before that.</summary>
    public required EarlierEvents Earlier { get; init; }

    /// <summary>What a flood does on each rack that is flooded when nothing is broken, and what to change where that is not what
    /// it should do. Computed when first asked for.</summary>
    public ImmutableArray<FloodAdvice> FloodAdvice => floodAdvice.Value;

    /// <summary>Curves and stretches for charts.</summary>
    internal RunCharts Charts { get; }

    /// <summary>How many scans the controller made.</summary>
    public required long Scans { get; init; }

    /// <summary>How many steps the integration of the racks took.</summary>
    public required long PlantSteps { get; init; }

    /// <summary>Whether a hazard is one that the scenario accepts.</summary>
    /// <param name="hazard">A hazard of this run.</param>
    public AcceptedHazard? Acceptance(Hazard hazard) =>
        Scenario.Accepts.FirstOrDefault(accepted => accepted.Kind == hazard.Kind);

    /// <summary>Whether every expectation was met and no hazard showed that the scenario does not accept.</summary>
    public bool Passed => Verdicts.All(verdict => verdict.IsMet) && Hazards.All(hazard => Acceptance(hazard) is not null);
}

/// <summary>Events of a long run that are no longer kept one by one.</summary>
/// <param name="Count">How many.</param>
/// <param name="Digest">A fingerprint of them; empty when there are none.</param>
public sealed record EarlierEvents(int Count, string Digest);

/// <summary>Water and light of one rack over a run.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="WaterUsedL">Evaporated and transpired, L.</param>
/// <param name="SpilledL">Lost onto the floor, beyond the drip tray, L.</param>
/// <param name="Reservoir">What became of the reservoir.</param>
/// <param name="TierLights">Light of each tier, bottom first.</param>
public sealed record RackTotals(
    RackId Rack, double WaterUsedL, double SpilledL, ReservoirTotals Reservoir, ImmutableArray<TierLight> TierLights)
{
    /// <summary>Water in the drip tray at the end, L.</summary>
    public double DripTrayL { get; init; }

    /// <summary>How long after the run began the wired float first opened the pump's wire; null when it never did. From then on only it
    /// may have stood between the rack and worse.</summary>
    public NodaTime.Duration? WiredFloatOpenedAfter { get; init; }

    /// <summary>How long after the run began the wired time relay first opened the pump's wire; null when it never did.</summary>
    public NodaTime.Duration? WiredTimeRelayOpenedAfter { get; init; }
}

/// <summary>The water of one reservoir over a run.</summary>
/// <param name="LowestL">The least that was in it, L.</param>
/// <param name="WarmestC">The warmest that it was, degrees Celsius.</param>
/// <param name="LowestOxygenMgPerL">The least oxygen that was dissolved in it, mg/L.</param>
/// <param name="ConductivityMsPerCm">Its electrical conductivity at the end, mS/cm at 25 degrees Celsius.</param>
public sealed record ReservoirTotals(double LowestL, double WarmestC, double LowestOxygenMgPerL, double ConductivityMsPerCm);

/// <summary>Light of one tier over the whole days of a run.</summary>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
/// <param name="HoursPerDay">Lit hours a day, averaged over the whole days; null when the run has none.</param>
/// <param name="DailyMolPerM2">Daily light integral, averaged likewise.</param>
public sealed record TierLight(int TierNumber, double? HoursPerDay, double? DailyMolPerM2);

/// <summary>What one load did over a run.</summary>
/// <param name="Load">The load.</param>
/// <param name="Powered">How long it was powered.</param>
/// <param name="SwitchedOn">How often it came on.</param>
/// <param name="EnergyKWh">What it drew, kWh.</param>
public sealed record LoadTotals(LoadId Load, Duration Powered, int SwitchedOn, double EnergyKWh);

/// <summary>What one circuit gave over a run.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="EnergyKWh">What its loads drew, kWh.</param>
/// <param name="PeakA">The most that it carried, A, inrush left out.</param>
public sealed record CircuitTotals(CircuitId Circuit, double EnergyKWh, double PeakA);

/// <summary>How often something happened.</summary>
/// <param name="Subject">What.</param>
/// <param name="Count">How often.</param>
public sealed record Tally(string Subject, int Count);
