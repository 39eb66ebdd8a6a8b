using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>Floods end before the next begin, and stay within what the interlocks allow the pump.</summary>
internal static class FloodChecks
{
    public static void Run(RackPart rack, Complaints complaints)
    {
        if (rack.Schedule?.Floods is not { } floods)
        {
            return;
        }

        var starts = OrdinaryDay.FloodStarts(floods, rack);
        if (rack.Limits is { Limits: var limits })
        {
            CheckSpacing(floods, starts, limits.PumpRest, complaints);
            CheckPumpRun(floods, starts, limits, complaints);
        }

        if (rack.Tray is { } usual && rack.Tiers.All(tier => tier.IsShapeSound))
        {
            var trays = rack.Tiers
                .Where(tier => tier.IsFlooded)
                .Select(tier => tier.TrayOver(usual).ToTray())
                .ToImmutableArray();
            CheckFull(floods, rack, trays, complaints);
            CheckDraining(floods, rack, trays, complaints);
        }
    }

    private static void CheckSpacing(FloodsPart floods, ImmutableArray<Duration> starts, Duration rest, Complaints complaints)
    {
        var (from, spacing) = starts
            .Select((start, index) =>
                (start, index + 1 < starts.Length ? starts[index + 1] - start : starts[0] + OrdinaryDay.Length - start))
            .MinBy(pair => pair.Item2);
        var needed = floods.PumpRun + Duration.Max(floods.Drain, rest);
        if (needed > spacing)
        {
            complaints.Refuse(
                floods.TimesPlace,
                $"the flood at {Say.Clock(from)} cannot end before the next begins {Say.Time(spacing)} later; it takes up to "
                + $"{Say.Time(floods.PumpRun)} of fill and soak, then {Say.Time(floods.Drain)} to drain and {Say.Time(rest)} for "
                + "the pump to rest",
                $"leave at least {Say.Time(needed)} from flood to flood, or shorten `fill`, `soak`, `drain` or `pump-rest`");
        }
    }

    private static void CheckPumpRun(
        FloodsPart floods, ImmutableArray<Duration> starts, InterlockLimits limits, Complaints complaints)
    {
        if (floods.PumpRun >= limits.PumpMaximumRun)
        {
            complaints.Refuse(
                floods.FillPlace,
                $"fill and soak take up to {Say.Time(floods.PumpRun)}, and the pump is stopped after {Say.Time(limits.PumpMaximumRun)}",
                "shorten them, or raise `pump-maximum-run` in `limits`");
        }

        var inADay = floods.PumpRun * starts.Length;
        if (inADay > limits.PumpDailyBudget)
        {
            complaints.Refuse(
                floods.TimesPlace,
                $"{starts.Length} floods run the pump up to {Say.Time(inADay)} a day, and its budget is {Say.Time(limits.PumpDailyBudget)}",
                "flood less, or raise `pump-daily-budget` in `limits`");
        }
    }

    private static void CheckFull(FloodsPart floods, RackPart rack, ImmutableArray<FloodTray> trays, Complaints complaints)
    {
        if (!floods.Fill.UntilFull)
        {
            return;
        }

        var canTell = rack.Tiers.Any(tier => tier.InUse
            && tier.Sensors.Sensors.Any(sensor => sensor.Kind is SensorKind.TrayFullFloat or SensorKind.TrayLevel));
        if (!canTell && rack.KnowsAllSensors)
        {
            complaints.Refuse(
                floods.FillPlace, "a fill until full, and no tray has a full float or a level",
                "add `full-float: 40 mm` to a tier's `sensors`, or fill for a time");
        }

        var lowestMm = trays.Select(tray => tray.StandpipeHeightMm).DefaultIfEmpty(double.MaxValue).Min();
        if (floods.Fill.FullDepthMm >= lowestMm)
        {
            complaints.Refuse(
                floods.FillPlace, $"a full depth of {Say.Number(floods.Fill.FullDepthMm.Value, 1)} mm, which the water does not reach",
                $"write less than the lowest standpipe ({Say.Number(lowestMm, 1)} mm)");
        }
    }

    private static void CheckDraining(FloodsPart floods, RackPart rack, ImmutableArray<FloodTray> trays, Complaints complaints)
    {
        if (trays.Any(tray => tray.WeepBoreMm <= 0) && rack.Supply is { HasCheckValve: true })
        {
            complaints.Refuse(
                rack.Supply.Place, "a tray without a weep, and a check valve that keeps its water from running back",
                "give the tray a `weep`, or write `check-valve: no` in `supply`");
            return;
        }

        var slowest = trays
            .Where(tray => tray.WeepBoreMm > 0 && tray.StandpipeHeightMm < tray.RimDepthMm)
            .Select(Emptying).DefaultIfEmpty(Duration.Zero).Max();
        if (slowest > floods.Drain)
        {
            var minutes = Duration.FromMinutes(Math.Ceiling(slowest.TotalMinutes));
            complaints.Warn(
                floods.Place,
                $"a tray takes about {Say.Time(minutes)} to empty through its weep, and `drain` is {Say.Time(floods.Drain)}",
                "lengthen `drain`, or drill the weep wider");
        }
    }

    /// <summary>Time to drain from the standpipe's height through the weep: t = 2 A (sqrt h1 - sqrt h2) / (Cd a sqrt(2 g)), with
    /// the smaller area where media take room, and Cd 0.62 for a plain edge (from memory, handbook range 0.60 to 0.62). A stack at
    /// its limit takes longer; the simulated rack tells.</summary>
    private static Duration Emptying(FloodTray tray)
    {
        const double dischargeCoefficient = 0.62;
        const double gravityMPerS2 = 9.80665;
        var fullM = tray.StandpipeHeightMm / 1000;
        var drainedM = FloodTray.DrainedBelowMm / 1000;
        var displacedToM = Math.Clamp(tray.Contents.DisplacedToMm / 1000, drainedM, fullM);
        var weepM2 = Math.PI / 4 * Math.Pow(tray.WeepBoreMm / 1000, 2);
        var displacedRoots = tray.Contents.DisplacedShare * (Math.Sqrt(displacedToM) - Math.Sqrt(drainedM));
        var areaRoots = tray.AreaM2 * (Math.Sqrt(fullM) - Math.Sqrt(drainedM) - displacedRoots);
        return Duration.FromSeconds(2 * areaRoots / (dischargeCoefficient * weepM2 * Math.Sqrt(2 * gravityMPerS2)));
    }
}
