using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How often a rack should be flooded, with the arithmetic: by the tier that dries first, since all share its floods.</summary>
public static class MediaWords
{
    private const double LPerM3 = 1000;
    private const double MlPerL = 1000;
    private const double HoursPerDay = 24;

    /// <summary>Water that the media of a tier give between full and dry, L.</summary>
    /// <param name="tier">The tier.</param>
    internal static double HeldL(Tier tier) => new MediaStore(tier.Tray.Contents.InsertTrays).CapacityM3 * LPerM3;

    /// <summary>It in lines, without a point at their ends; none for a rack on which nothing can drink.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="survey">Its floods.</param>
    /// <param name="thirsts">What its tiers give off.</param>
    /// <param name="depletedShare">Share of their water that media may lose before the next flood: above 0 to 1.</param>
    /// <param name="longestWet">How long a flood may keep roots wet.</param>
    public static IEnumerable<string> Lines(
        Rack rack, FloodSurvey survey, IEnumerable<TierThirst> thirsts, double depletedShare, Duration longestWet)
    {
        ArgumentNullException.ThrowIfNull(rack);
        ArgumentNullException.ThrowIfNull(survey);
        var driest = thirsts.Where(one => one.Tier.InUse && HeldL(one.Tier) > 0)
            .Select(thirst => (Thirst: thirst, Need: Need(thirst, survey, depletedShare)))
            .OrderByDescending(one => one.Need.DailyL / one.Need.HeldL).FirstOrDefault();
        if (driest.Need is not { DailyL: > 0 } need)
        {
            yield break;
        }

        var tier = driest.Thirst.Tier;
        yield return $"by tier {tier.Number}, which dries first: media hold {tier.Tray.Contents.InsertTrays} x "
            + $"{MediaStore.PerInsertTrayM3 * LPerM3:0.0} L = {need.HeldL:0.0} L between full and dry, which is assumed: weigh a tray; "
            + $"{100 * depletedShare:0} % may go: {need.AllowedL:0.00} L";
        yield return $"the pump runs {survey.PumpRun.TotalMinutes:0.#} min, which refills {100 * need.RefilledShare:0} % of what is "
            + $"missing: {need.AllowedL:0.00} x {need.RefilledShare:0.000} = {need.BetweenFloodsL:0.00} L from flood to flood";
        var (litMlPerH, darkMlPerH) = ($"{need.LitLPerH * MlPerL:0.0}", $"{need.DarkLPerH * MlPerL:0.0}");
        yield return $"full-grown, it gives off {litMlPerH} mL/h lit and {darkMlPerH} mL/h dark: {need.LitH:0.0} h x {litMlPerH} + "
            + $"{HoursPerDay - need.LitH:0.0} h x {darkMlPerH} = {need.DailyL * MlPerL:0} mL a day, simulated";
        yield return $"{need.DailyL:0.00} / {need.BetweenFloodsL:0.00} = {need.DailyL / need.BetweenFloodsL:0.0}: at least "
            + $"{(need.FloodsADay == 1 ? "1 flood" : $"{need.FloodsADay} floods")} a day, {Apart(need)}";
        yield return Scheduled(rack, driest.Thirst, depletedShare);
        yield return Wet(survey, longestWet);
    }

    private static FloodNeed Need(TierThirst thirst, FloodSurvey survey, double depletedShare) => new()
    {
        HeldL = HeldL(thirst.Tier),
        DepletedShare = depletedShare,
        RefilledShare = MediaStore.RefilledShare(survey.PumpRun),
        LitLPerH = thirst.LitLPerH,
        DarkLPerH = thirst.DarkLPerH,
        LitH = thirst.LitH,
    };

    private static string Apart(FloodNeed need) => need.LitIntervalH >= HoursPerDay && need.DarkIntervalH >= HoursPerDay
        ? "and a day apart is not too long"
        : $"no more than {need.LitIntervalH:0.0} h apart while lit"
            + (need.DarkIntervalH < HoursPerDay ? $" and {need.DarkIntervalH:0.0} h in the dark" : "");

    private static string Scheduled(Rack rack, TierThirst thirst, double depletedShare)
    {
        var count = rack.Schedule.Starts().Length;
        var goes = 1 - thirst.DriestShare;
        return $"as scheduled, {count} a day, {100 * goes:0} % go at the most, simulated: "
            + (goes <= depletedShare ? "enough" : "too dry: flood more often, or spread the floods over the lit hours");
    }

    private static string Wet(FloodSurvey survey, Duration longestWet)
    {
        var drained = survey.Tiers.Where(tier => tier.TakesPart).Max(tier => tier.Drained ?? Duration.MaxValue);
        if (drained == Duration.MaxValue)
        {
            return "a tray never drains: see `check` first";
        }

        var wet = survey.PumpRun + drained;
        return $"a flood keeps roots wet for {survey.PumpRun.TotalMinutes:0.#} min of pumping + {drained.TotalMinutes:0.0} min of "
            + $"draining = {wet.TotalMinutes:0.0} min: "
            + (wet <= longestWet ? $"within the {longestWet.TotalMinutes:0.#} min that are allowed"
                : $"more than the {longestWet.TotalMinutes:0.#} min that are allowed: shorten fill or soak by "
                    + $"{Math.Min((wet - longestWet).TotalMinutes, survey.PumpRun.TotalMinutes):0.0} min, or widen the weep");
    }
}
