using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using RackController.Growing;

namespace RackController.Page;

/// <summary>Says what batches are and what was put down of them.</summary>
internal static class BatchWords
{
    /// <summary>Where a batch is in its life: <c>4 trays in the light on north/tier 2, day 6 of 9</c>.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="today">The local date.</param>
    /// <param name="byDate">Whether it moves by the day that was planned.</param>
    public static string Stands(BookedBatch batch, LocalDate today, bool byDate) => batch.PhaseOn(today, byDate) switch
    {
        BatchPhase.Planned => $"{Trays(batch.Start.Trays)} to sow",
        BatchPhase.InTheDark => $"{Trays(batch.TraysLeft)} in the dark, {DayOf(batch, today)}",
        BatchPhase.InTheLight =>
            $"{Trays(batch.TraysLeft)} in the light on {Places(batch.PlacesOn(today, byDate)!)}, {DayOf(batch, today)}",
        _ => $"gone since {PlanDates.Day(batch.GoneOn!.Value)}{Weight(batch.HarvestedG)}",
    };

    /// <summary>Tiers, with trays where there are several: <c>north/tier 2 (3) and north/tier 1 (1)</c>.</summary>
    public static string Places(CourseStep step) => step.Places.IsEmpty ? "the light"
        : step.Places is [var one] ? one.Tier
        : string.Join(" and ", step.Places.Select(place => $"{place.Tier} ({place.Trays})"));

    /// <summary>An entry in words.</summary>
    public static string Of(BookEntry entry) => entry switch
    {
        BatchTakenUp start => $"taken up: {Trays(start.Trays)} of {start.Crop}, to be sown on {PlanDates.Day(start.Sow)}"
            + (start.For.Length > 0 ? $", for {start.For}" : ""),
        BatchReplanned replanned => $"planned anew: harvest on {PlanDates.Day(replanned.Harvest)}"
            + string.Concat(replanned.Course.Select(step => $", {PlanDates.Day(step.Day)} {Places(step)}")),
        BatchSown sown => $"sown on {PlanDates.Day(sown.Day)}, seed lot {(sown.SeedLot.Length > 0 ? sown.SeedLot : "not told")}",
        BatchMoved moved => $"moved on {PlanDates.Day(moved.Day)} to {Places(new CourseStep(moved.Day, moved.Stage, moved.Places))}",
        BatchHarvested harvested =>
            $"harvested on {PlanDates.Day(harvested.Day)}: {Trays(harvested.Trays)}{From(harvested.From)}{Weight(harvested.WeightG)}"
            + (harvested.To.Length > 0 ? $", to {harvested.To}" : ""),
        BatchDiscarded discarded => $"thrown away on {PlanDates.Day(discarded.Day)}: {Trays(discarded.Trays)}{From(discarded.From)}, "
            + $"because {discarded.Why}",
        BatchNoted noted => noted.Text,
        UpkeepDone done => $"{done.Rack}: {UpkeepWorks.WordsOf(done.Work)}" + (done.Note.Length > 0 ? $", {done.Note}" : ""),
        EntryStruck struck => $"entry {struck.Number} struck: {struck.Why}",
        _ => "",
    };

    private static string From(ImmutableArray<StandsOn> from) =>
        from.IsEmpty ? "" : $" from {string.Join(" and ", from.Select(place => $"{place.Tier} ({place.Trays})"))}";

    /// <summary>A weight behind something; nothing where none was told.</summary>
    public static string Weight(double g) => g switch
    {
        0 => "",
        < 1000 => string.Create(CultureInfo.InvariantCulture, $", {g:0.#} g"),
        _ => string.Create(CultureInfo.InvariantCulture, $", {g / 1000:0.##} kg"),
    };

    /// <summary>Trays: <c>1 tray</c>, <c>4 trays</c>.</summary>
    public static string Trays(int count) => count == 1 ? "1 tray" : $"{count} trays";

    private static string DayOf(BookedBatch batch, LocalDate today) =>
        $"day {Period.DaysBetween(batch.Sown!.Day, today)} of {Period.DaysBetween(batch.Sown.Day, batch.Start.Harvest)}";
}
