using NodaTime;

namespace RackController.Growing;

/// <summary>How long a lamp has to be on for a daily light integral, with the arithmetic.</summary>
public static class LightAdvice
{
    // What crops of config/crops.yaml bear at most; common practice, no source.
    private static readonly Duration longest = Duration.FromHours(18);

    /// <summary>It in lines, without a point at their ends.</summary>
    /// <param name="ppfdUmolPerM2S">Photon flux density at the canopy with the lamp on, umol/m2/s, above 0.</param>
    /// <param name="lit">How long the rack file lights it each day.</param>
    /// <param name="targetMolPerM2">The daily light integral that is wanted, mol/m2; null where nobody said.</param>
    public static IEnumerable<string> Lines(double ppfdUmolPerM2S, Duration lit, double? targetMolPerM2)
    {
        var now = DailyLight.MolPerM2(ppfdUmolPerM2S, lit);
        yield return $"now {lit.TotalHours:0.##} h x {ppfdUmolPerM2S:0.#} umol/m2/s x 3600 s/h / 1000000 = {now:0.0} mol/m2/d; "
            + $"an hour more gives {DailyLight.MolPerM2(ppfdUmolPerM2S, Duration.FromHours(1)):0.00}";
        if (targetMolPerM2 is not { } target)
        {
            yield break;
        }

        var needed = DailyLight.LitFor(ppfdUmolPerM2S, target);
        yield return $"for {target:0.##} mol/m2/d: {target:0.##} x 1000000 / ({ppfdUmolPerM2S:0.#} x 3600) = "
            + $"{needed.TotalHours:0.0} h a day"
            + (needed <= longest ? "" : $", more than the {longest.TotalHours:0} h that most crops bear: a lamp of "
                + $"{DailyLight.PpfdUmolPerM2S(target, longest):0} umol/m2/s gives it in those");
    }
}
