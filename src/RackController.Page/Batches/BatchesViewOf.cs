using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using RackController.Growing;
using RackController.Model;

namespace RackController.Page;

/// <summary>Turns the growing book into what the pages of batches show.</summary>
/// <param name="site">The site.</param>
/// <param name="book">The book.</param>
/// <param name="today">The local date.</param>
internal sealed class BatchesViewOf(Site site, GrowingBook book, LocalDate today)
{
    // Beyond that the plan is the better place to look.
    private const int ShownAheadDays = 14;
    private const int MostGone = 20;

    private readonly bool byDate = site.Batches.MovesByDate;

    /// <summary>What the batches ask of the racks.</summary>
    public AsksView Asks()
    {
        var asks = BatchAsks.Of(site, book, today);
        return new AsksView(
            [.. asks.Where(one => one.IsNews).SelectMany(one => one.Changes)], [.. asks.SelectMany(one => one.Disagreements)],
            site.Batches.ScheduleFollows);
    }

    /// <summary>The batches, what is due first.</summary>
    public ImmutableArray<BatchGroup> Groups()
    {
        var rows = book.Batches.Select(batch => (Batch: batch, Phase: batch.PhaseOn(today, byDate), Row: Row(batch))).ToList();
        var there = rows.Where(one => one.Phase != BatchPhase.Gone).ToList();
        var ahead = today.PlusDays(ShownAheadDays);
        var far = there.Count(one => one.Phase == BatchPhase.Planned && one.Batch.Start.Sow > ahead);
        BatchGroup[] groups =
        [
            new("Due", [.. there.Where(one => one.Row.IsDue).Select(one => one.Row)]),
            new("In the light", [.. there.Where(one => !one.Row.IsDue && one.Phase == BatchPhase.InTheLight).Select(one => one.Row)]),
            new("In the dark", [.. there.Where(one => !one.Row.IsDue && one.Phase == BatchPhase.InTheDark).Select(one => one.Row)]),
            new(
                far > 0 ? $"To sow within two weeks; {far} later" : "To sow",
                [
                    .. there.Where(one => !one.Row.IsDue && one.Phase == BatchPhase.Planned && one.Batch.Start.Sow <= ahead)
                        .OrderBy(one => one.Batch.Start.Sow).Select(one => one.Row),
                ]),
            new(
                "Gone",
                [
                    .. rows.Where(one => one.Phase == BatchPhase.Gone).OrderByDescending(one => one.Batch.GoneOn).Take(MostGone)
                        .Select(one => one.Row),
                ]),
        ];
        return [.. groups.Where(group => !group.Rows.IsEmpty || group.Title.Contains("later", StringComparison.Ordinal))];
    }

    /// <summary>The batches of a lot, a seed lot, a crop or a customer, newest first: from a tray back to its seed, and from a bag of
    /// seed to everybody who had of it.</summary>
    /// <param name="sought">A part of its name.</param>
    public ImmutableArray<BatchGroup> Found(string sought)
    {
        bool Has(string name) => name.Contains(sought, StringComparison.OrdinalIgnoreCase);
        return
        [
            new BatchGroup(
                $"With “{sought}” in lot, seed lot, crop or customer",
                [
                    .. book.Batches.Reverse().Where(batch => Has(batch.Lot) || Has(batch.Start.Crop) || Has(batch.Start.For)
                            || Has(batch.Sown?.SeedLot ?? "") || batch.Harvests.Any(one => Has(one.To)))
                        .Select(Row),
                ]),
        ];
    }

    /// <summary>A batch in a list.</summary>
    public BatchRow Row(BookedBatch batch)
    {
        var (day, words, deed, verb) = Next(batch);
        return new BatchRow(
            batch.Lot, batch.Start.Crop, BatchWords.Stands(batch, today, byDate),
            day is null ? "" : $"{words} {(day == today ? "today" : PlanDates.Day(day.Value))}", day <= today, deed, verb);
    }

    /// <summary>What is known of a batch.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="sums">What it had; null where the journal cannot say.</param>
    public ImmutableArray<Fact> Facts(BookedBatch batch, GrownSums? sums)
    {
        var facts = ImmutableArray.CreateBuilder<Fact>();
        facts.Add(new Fact("Crop", batch.Start.Crop));
        facts.Add(new Fact("For", batch.Start.For.Length > 0 ? batch.Start.For : "nobody in particular"));
        facts.Add(new Fact(
            "Seed lot", batch.Sown is null ? "not sown yet" : batch.Sown.SeedLot.Length > 0 ? batch.Sown.SeedLot : "not told"));
        facts.Add(new Fact("Sown", batch.Sown is { } sown ? PlanDates.Full(sown.Day) : $"planned for {PlanDates.Full(batch.Start.Sow)}"));
        foreach (var step in Course(batch))
        {
            facts.Add(new Fact($"From {PlanDates.Day(step.Day)}", $"{StageName(batch, step.Stage)}, {BatchWords.Places(step)}"));
        }

        facts.Add(new Fact("Harvest planned", PlanDates.Full(batch.Start.Harvest)));
        if (!batch.Harvests.IsEmpty)
        {
            facts.Add(new Fact(
                "Harvested", $"{BatchWords.Trays(batch.Harvests.Sum(one => one.Trays))}{BatchWords.Weight(batch.HarvestedG)}"));
        }

        if (sums is { Days: > 0 })
        {
            facts.AddRange(Sums(sums));
        }

        return facts.DrainToImmutable();
    }

    private IEnumerable<Fact> Sums(GrownSums sums)
    {
        string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
        yield return new Fact("Days on record in the light", $"{sums.Days}");
        yield return new Fact("Floods", Number(sums.Floods));
        if (sums.LightMolPerM2 is { } light)
        {
            yield return new Fact("Light in all, by the lamps' PPFD", $"{Number(light)} mol/m2, {Number(light / sums.Days)} a day");
        }

        if (sums is { AirLeastC: { } least, AirMeanC: { } mean, AirMostC: { } most })
        {
            var unit = site.Units.Of("°C");
            yield return new Fact("Air", $"{unit.Words(least, 1)} to {unit.Words(most, 1)}, {unit.Words(mean, 1)} on average");
        }
    }

    // Where it really stood; by date, where it is taken to have stood.
    private IEnumerable<CourseStep> Course(BookedBatch batch)
    {
        CourseStep? last = null;
        if (batch.Sown is not { } sown)
        {
            yield break;
        }

        var end = LocalDate.Min(batch.GoneOn?.PlusDays(-1) ?? today, today);
        for (var day = sown.Day; day <= end; day = day.PlusDays(1))
        {
            var step = batch.PlacesOn(day, byDate);
            if (step is not null && (last is null || last.Stage != step.Stage || !last.Places.SequenceEqual(step.Places)))
            {
                last = step with { Day = day };
                yield return last;
            }
        }
    }

    private static string StageName(BookedBatch batch, int stage) =>
        batch.Start.Stages[Math.Min(stage, batch.Start.Stages.Length - 1)].Name;

    private (LocalDate? Day, string Words, string? Deed, string Verb) Next(BookedBatch batch) => batch.PhaseOn(today, byDate) switch
    {
        BatchPhase.Planned => (batch.Start.Sow, "sow", "sow", "Sown…"),
        BatchPhase.Gone => (null, "", null, ""),
        _ when batch.NextStep(today, byDate) is { } step && step.Day < batch.Start.Harvest =>
            (step.Day, $"to {BatchWords.Places(step)}", "move", "Moved…"),
        _ => (batch.Start.Harvest, "harvest", "harvest", "Harvested…"),
    };
}
