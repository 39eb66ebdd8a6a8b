using RackController.Model;

namespace RackController.Growing;

/// <summary>Whether a tier suits a stage of a crop. The rack decides how often it is flooded and how bright a lamp is; how long the
/// lamp is on can be set for each tier.</summary>
public static class Fit
{
    private const double SecondsPerH = 3600;
    private const double UmolPerMol = 1e6;

    /// <summary>How many hours a day such a tier may be lit for a stage: as long as the stage may be lit, and as long as its daily
    /// light wants with this lamp. Null where the tier does not suit it at all.</summary>
    /// <param name="stage">A stage.</param>
    /// <param name="kind">A kind of tier.</param>
    /// <returns>Hours a day.</returns>
    public static Bounds? HoursOn(LitStage stage, TierKind kind) => Trouble(stage, kind) is null ? Hours(stage, kind) : null;

    /// <summary>How many hours a day a lamp may be on for a stage, whatever else there is to say of its tier; perhaps none
    /// (<see cref="Bounds.IsPossible"/>).</summary>
    /// <param name="stage">A stage.</param>
    /// <param name="ppfdUmolPerM2S">Photon flux density at the canopy, above 0.</param>
    public static Bounds HoursWith(LitStage stage, double ppfdUmolPerM2S)
    {
        ArgumentNullException.ThrowIfNull(stage);
        Invariant.Holds(ppfdUmolPerM2S > 0, "a lit tier has light");
        var molPerH = MolPerH(ppfdUmolPerM2S);
        var daily = stage.DailyLightMolPerM2D;
        return stage.PhotoperiodH.Within(new Bounds(daily.Least / molPerH, daily.Most / molPerH));
    }

    /// <summary>What is wrong with a kind of tier for a stage, and what would be right; null where it suits.</summary>
    /// <param name="stage">A stage.</param>
    /// <param name="kind">A kind of tier.</param>
    public static TierTrouble? Trouble(LitStage stage, TierKind kind)
    {
        var (ppfd, bears) = (kind.PpfdUmolPerM2S, stage.PpfdUmolPerM2S);
        if (!bears.Holds(ppfd))
        {
            return new TierTrouble($"the lamp gives {ppfd:0} umol/m2/s", $"a lamp that gives {bears.Least:0} to {bears.Most:0} umol/m2/s");
        }

        var floods = stage.FloodsIn(kind.Media);
        if (!floods.Holds(kind.FloodsPerDay))
        {
            return new TierTrouble(
                $"floods come {kind.FloodsPerDay} times a day", $"a rack that is flooded {floods.Least} to {floods.Most} times a day");
        }

        var (daily, lit) = (stage.DailyLightMolPerM2D, stage.PhotoperiodH);
        return Hours(stage, kind).IsPossible ? null : new TierTrouble(
            $"{lit.Least:0.#} to {lit.Most:0.#} h of {ppfd:0} umol/m2/s do not give {daily.Least:0.#} to {daily.Most:0.#} mol/m2/d",
            $"a lamp of {daily.Least / MolPerH(1) / lit.Most:0} to {daily.Most / MolPerH(1) / Math.Max(1, lit.Least):0} umol/m2/s");
    }

    private static Bounds Hours(LitStage stage, TierKind kind) => HoursWith(stage, kind.PpfdUmolPerM2S);

    private static double MolPerH(double ppfdUmolPerM2S) => ppfdUmolPerM2S * SecondsPerH / UmolPerMol;
}

/// <summary>Why a tier does not suit a stage.</summary>
/// <param name="Reason">What is wrong with it.</param>
/// <param name="Cure">What would be right.</param>
public sealed record TierTrouble(string Reason, string Cure);
