using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>The batches of a plan, as entries of the growing book, or why there are none.</summary>
/// <param name="Entries">The entries, batch by batch; empty where the plan cannot be read.</param>
/// <param name="Site">The place that the plan was made for.</param>
/// <param name="Complaint">What is wrong, a sentence; null where nothing is.</param>
public sealed record PlanBatchesReading(ImmutableArray<BookEntry> Entries, string Site, string? Complaint);

/// <summary>Reads the batches of a plan that was handed over as JSON. What grows already is put down as sown, and as moved where it had
/// been.</summary>
public static class PlanBatches
{
    /// <summary>Reads them.</summary>
    /// <param name="json">What <see cref="PlanJson"/> wrote.</param>
    /// <param name="at">The time, for the entries.</param>
    /// <param name="by">Who takes them up.</param>
    /// <param name="today">The local date: what was moved before it is put down as moved.</param>
    public static PlanBatchesReading Read(string json, Instant at, string by, LocalDate today)
    {
        JsonPlan? plan;
        try
        {
            plan = JsonSerializer.Deserialize(json, PlanJsonContext.Default.JsonPlan);
        }
        catch (JsonException)
        {
            plan = null;
        }

        if (plan is null)
        {
            return Refused("This is no plan that this version of `plan` wrote: choose the plan.json of its folder.");
        }

        var entries = ImmutableArray.CreateBuilder<BookEntry>();
        if (plan.Batches.IsDefault || plan.Batches.Any(batch => batch is null))
        {
            return Refused("A batch of the plan is not whole: make the plan again.");
        }

        // Trays of one batch on two tiers are two in a plan, and one in the book.
        foreach (var batch in plan.Batches.GroupBy(batch => batch.Lot, StringComparer.Ordinal).Select(Together))
        {
            if (StartOf(batch, at, by) is not { } start)
            {
                return Refused($"The batch {batch.Lot} of the plan is not whole: make the plan again.");
            }

            entries.Add(start);
            if (batch.GrowsAlready)
            {
                entries.AddRange(WhatWasDone(start, at, by, today));
            }
        }

        return new PlanBatchesReading(entries.DrainToImmutable(), plan.Site, null);
    }

    private static PlanBatchesReading Refused(string why) => new([], "", why);

    private static JsonBatch Together(IEnumerable<JsonBatch> parts)
    {
        var all = parts.ToList();
        return all.Count == 1 ? all[0] : all[0] with
        {
            Trays = all.Sum(part => Math.Clamp(part.Trays, 0, 10_000)),
            Harvest = all.Max(part => part.Harvest)!,
            Orders = [.. all.SelectMany(part => part.Orders)],
            Stays = [.. all.SelectMany(part => part.Stays)],
        };
    }

    private static IEnumerable<BookEntry> WhatWasDone(BatchTakenUp start, Instant at, string by, LocalDate today)
    {
        yield return new BatchSown(at, by, start.Lot, start.Sow, "");
        if (start.Course.LastOrDefault(step => step.Day <= today) is { Places.IsEmpty: false } step)
        {
            yield return new BatchMoved(at, by, start.Lot, step.Day, step.Stage, step.Places);
        }
    }

    private static BatchTakenUp? StartOf(JsonBatch batch, Instant at, string by)
    {
        if (Day(batch.Sow) is not { } sow || Day(batch.Harvest) is not { } harvest || batch.Stages.IsEmpty
            || batch.Stages.Any(stage => stage is null || !IsSane(stage.Needs)) || batch.Stays.Contains(null!)
            || batch.Orders.Contains(null!))
        {
            return null;
        }

        var stages = batch.Stages.Select(stage => Day(stage.From)).ToImmutableArray();
        var stays = batch.Stays.Select(stay => (stay.Tier, stay.Trays, From: Day(stay.From), Until: Day(stay.Until))).ToImmutableArray();
        if (batch.Stages.Any(stage => stage.Needs.FloodsPerDay.All(floods => floods.Media is not null)) || stages.Contains(null)
            || stays.Any(stay => stay.From is null || stay.Until is null))
        {
            return null;
        }

        // What stood in the light before the plan began stood where the plan finds it: more is not known.
        var known = stays.Min(stay => stay.From);
        var course = stages.Concat(stays.Select(stay => stay.From)).OfType<LocalDate>().Distinct().Order().Select(day => new CourseStep(
            day, Math.Max(0, stages.Count(start => start <= day) - 1),
            [
                .. stays.Where(stay => Holds(stay.From, stay.Until, day < known ? known : day))
                    .Select(stay => new StandsOn(stay.Tier, stay.Trays)),
            ]));
        return new BatchTakenUp(
            at, by, batch.Lot, BookRules.Cut(batch.Crop), batch.Trays, sow, [.. batch.Stages.Select(Stage)],
            [.. WithoutRepeats(course.Where(step => !step.Places.IsEmpty))], harvest,
            BookRules.Cut(string.Join(", ", batch.Orders.Select(order => order.Customer).Distinct(StringComparer.Ordinal))))
        {
            IsOfPlan = true,
        };
    }

    private static IEnumerable<CourseStep> WithoutRepeats(IEnumerable<CourseStep> course)
    {
        CourseStep? last = null;
        foreach (var step in course)
        {
            if (last is null || last.Stage != step.Stage || !last.Places.SequenceEqual(step.Places))
            {
                yield return step;
            }

            last = step;
        }
    }

    private static bool Holds(LocalDate? from, LocalDate? until, LocalDate? day) => from <= day && day < until;

    // Whole numbers of a plan fit into whole numbers here; whether they make sense is for the book to say.
    private static bool IsSane(JsonNeeds needs) =>
        Fits(needs.Days) && needs.FloodsPerDay.All(floods => floods is not null && Fits(floods.PerDay));

    private static bool Fits(JsonRange range) => range is { Least: >= 0 and <= 1e6, Most: >= 0 and <= 1e6 };

    private static LitStage Stage(JsonStage stage) => new()
    {
        Name = stage.Name,
        Days = Whole(stage.Needs.Days),
        DailyLightMolPerM2D = Range(stage.Needs.DailyLightMolPerM2D),
        PpfdUmolPerM2S = Range(stage.Needs.PpfdUmolPerM2S),
        PhotoperiodH = Range(stage.Needs.PhotoperiodH),
        Floods = [.. stage.Needs.FloodsPerDay.Select(floods => new MediaFloods(floods.Media, Whole(floods.PerDay)))],
    };

    private static Bounds Range(JsonRange range) => new(range.Least, range.Most);

    private static WholeBounds Whole(JsonRange range) => new((int)range.Least, (int)range.Most);

    private static LocalDate? Day(string iso) => LocalDatePattern.Iso.Parse(iso) is { Success: true, Value: var day } ? day : null;
}
