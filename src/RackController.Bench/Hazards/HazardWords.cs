using RackController.Model;

namespace RackController.Bench;

/// <summary>How hazards are called in scenarios and reports.</summary>
public static class HazardWords
{
    /// <summary>As a scenario writes it.</summary>
    /// <param name="kind">Which.</param>
    public static string Key(HazardKind kind) => kind switch
    {
        HazardKind.WaterOnTheFloor => "water-on-the-floor",
        HazardKind.PumpRunsDry => "pump-runs-dry",
        HazardKind.PumpPastItsMaximumRun => "pump-past-its-maximum-run",
        HazardKind.CircuitOverloaded => "circuit-overloaded",
        HazardKind.LightsInTheHeat => "lights-in-the-heat",
        _ => throw new InvariantBrokenException($"every hazard has its key, {kind} too"),
    };

    /// <summary>As a report writes it.</summary>
    /// <param name="kind">Which.</param>
    public static string Title(HazardKind kind) => kind switch
    {
        HazardKind.WaterOnTheFloor => "Water on the floor",
        HazardKind.PumpRunsDry => "Pump runs dry",
        HazardKind.PumpPastItsMaximumRun => "Pump past its maximum run",
        HazardKind.CircuitOverloaded => "Circuit overloaded",
        HazardKind.LightsInTheHeat => "Lights in the heat",
        _ => throw new InvariantBrokenException($"every hazard has its title, {kind} too"),
    };
}
