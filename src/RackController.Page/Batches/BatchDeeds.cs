using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Http;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;
using RackController.Model;

namespace RackController.Page;

/// <summary>What can be put down of a batch: the form that asks for it, and the entry that comes of what was sent.</summary>
/// <param name="site">The site.</param>
/// <param name="book">The book.</param>
/// <param name="now">The time.</param>
internal sealed class BatchDeeds(Site site, GrowingBook book, Instant now)
{
    /// <summary>What can be put down, as last parts of addresses.</summary>
    public static readonly ImmutableArray<string> All = ["sow", "move", "harvest", "discard", "note", "strike"];

    private const string TierPrefix = "tier:";

    private readonly LocalDate today = now.InZone(site.Zone).Date;

    /// <summary>What can be put down of a batch as it is.</summary>
    public static ImmutableArray<DeedLink> LinksOf(BookedBatch batch)
    {
        string[] deeds = batch.Sown is null ? ["sow", "note"] : batch.TraysLeft > 0 ? ["move", "harvest", "discard", "note"] : ["note"];
        return [.. deeds.Select(deed => new DeedLink(BatchAddress.Of(deed, batch.Lot), Verb(deed) + "…"))];
    }

    /// <summary>The title of the form.</summary>
    public static string Title(string deed, string lot) =>
        deed == "strike" ? $"Strike an entry of {lot}" : $"{lot}: {Verb(deed).ToLowerInvariant()}";

    /// <summary>What the button of the form says.</summary>
    public static string Verb(string deed) => deed switch
    {
        "sow" => "Sown",
        "move" => "Moved",
        "harvest" => "Harvested",
        "discard" => "Thrown away",
        "strike" => "Strike it",
        _ => "Noted",
    };

    /// <summary>What to know before it is put down.</summary>
    public static ImmutableArray<string> Hints(string deed, BookedBatch batch) => deed switch
    {
        "sow" => [$"{BatchWords.Trays(batch.Start.Trays)} of {batch.Start.Crop}, planned for {PlanDates.Full(batch.Start.Sow)}."],
        "move" => [$"Say where all {BatchWords.Trays(batch.TraysLeft)} stand from then on."],
        "harvest" => [$"{BatchWords.Trays(batch.TraysLeft)} are left. A weight belongs to what is cut; live trays need none."],
        "discard" => [$"{BatchWords.Trays(batch.TraysLeft)} are left."],
        "strike" => ["What is struck stays legible, with who struck it and why, and counts no more."],
        _ => [],
    };

    /// <summary>What the form asks.</summary>
    /// <param name="deed">What is put down.</param>
    /// <param name="batch">The batch.</param>
    /// <param name="number">The number of the entry, where one is struck.</param>
    public ImmutableArray<FormField> Fields(string deed, BookedBatch batch, string number) => deed switch
    {
        "sow" => [Day(), Text("seed", "Seed lot, as the bag names it", isRequired: false)],
        "move" =>
        [
            Day(),
            new FormField("stage", "Stage", "select", $"{NextOf(batch)?.Stage ?? 0}")
            {
                Options = [.. batch.Start.Stages.Select((stage, index) => new Fact($"{index}", stage.Name))],
            },
            .. TierFields(batch),
        ],
        "harvest" =>
        [
            Day(), .. GoneFields(batch),
            Number("weight", "Weight in all, g", 0, 0, 1_000_000, "any"), Text("to", "To whom", isRequired: false, batch.Start.For),
        ],
        "discard" =>
            [Day(), .. GoneFields(batch), Text("why", "Why", isRequired: true)],
        "strike" => [new FormField("number", "", "hidden", number), Text("why", "Why it was wrong", isRequired: true)],
        _ => [Text("text", "Note", isRequired: true)],
    };

    /// <summary>The entry that was sent; null where it is not whole.</summary>
    /// <param name="deed">What is put down.</param>
    /// <param name="batch">The batch.</param>
    /// <param name="form">What was sent.</param>
    /// <param name="by">By whom.</param>
    public BookEntry? EntryOf(string deed, BookedBatch batch, IFormCollection form, string by)
    {
        var (lot, day) = (batch.Lot, LocalDatePattern.Iso.Parse(form["day"].ToString()));
        string Told(string name) => BookRules.Cut(form[name].ToString());
        return deed switch
        {
            "note" => new BatchNoted(now, by, lot, Told("text")),
            "strike" when long.TryParse(form["number"].ToString(), CultureInfo.InvariantCulture, out var number) && IsOf(lot, number) =>
                new EntryStruck(now, by, number, Told("why")),
            "strike" => null,
            _ when !day.Success => null,
            "sow" => new BatchSown(now, by, lot, day.Value, Told("seed")),
            "move" when int.TryParse(form["stage"].ToString(), CultureInfo.InvariantCulture, out var stage) =>
                new BatchMoved(now, by, lot, day.Value, stage, PlacesOf(form)),
            "harvest" when GoneOf(form) is var (trays, from) && trays is not null && WeightOf(form) is { } weightG =>
                new BatchHarvested(now, by, lot, day.Value, trays.Value, weightG, Told("to")) { From = from },
            "discard" when GoneOf(form) is var (trays, from) && trays is not null && Told("why").Length > 0 =>
                new BatchDiscarded(now, by, lot, day.Value, trays.Value, Told("why")) { From = from },
            _ => null,
        };
    }

    /// <summary>What keeps a form that was sent from being an entry, a sentence.</summary>
    /// <param name="form">What was sent.</param>
    public static string WhatIsMissing(IFormCollection form) =>
        form.ContainsKey("day") && !LocalDatePattern.Iso.Parse(form["day"].ToString()).Success ? "The day is no date, such as 2027-01-15."
        : form.ContainsKey("weight") && WeightOf(form) is null ? "The weight is no number of g, such as 812.5."
        : form.Keys.Any(key => IsOfTrays(key) && WholeOf(form, key) is null) ? "A number of trays is a whole one."
        : form.ContainsKey("why") && BookRules.Cut(form["why"].ToString()).Length == 0 ? "Say why."
        : "Something of the form is missing: open it anew.";

    private static bool IsOfTrays(string key) => key == "trays" || key.StartsWith(TierPrefix, StringComparison.Ordinal);

    private bool IsOf(string lot, long number) => book.Of(lot).Any(one => one.Number == number);

    private CourseStep? NextOf(BookedBatch batch) => batch.NextStep(today, byDate: false);

    // The places that were planned, else those where it stands, stand in the form already.
    private IEnumerable<FormField> TierFields(BookedBatch batch)
    {
        var places = (NextOf(batch) ?? batch.PlacesOn(today, site.Batches.MovesByDate))?.Places ?? [];
        return site.Racks.SelectMany(rack => rack.Tiers.Where(tier => tier.InUse && tier.Light is not null).Reverse().Select(tier =>
        {
            var name = SiteTiers.NameOf(rack, tier.Number);
            var trays = places.FirstOrDefault(place => place.Tier == name)?.Trays ?? 0;
            return Number(TierPrefix + name, $"Trays on {name}", trays, 0, tier.Tray.Contents.InsertTrays, "1");
        }));
    }

    // Which trays are gone decides which tier is empty, so it is asked where they stand on several.
    private IEnumerable<FormField> GoneFields(BookedBatch batch)
    {
        var places = batch.PlacesOn(today, site.Batches.MovesByDate)?.Places ?? [];
        return places.Length < 2
            ? [Number("trays", "Insert trays", batch.TraysLeft, 1, batch.TraysLeft, "1")]
            : places.Select(place => Number(TierPrefix + place.Tier, $"Trays from {place.Tier}", place.Trays, 0, place.Trays, "1"));
    }

    private static (int? Trays, ImmutableArray<StandsOn> From) GoneOf(IFormCollection form)
    {
        var from = PlacesOf(form);
        return form.ContainsKey("trays") ? (WholeOf(form, "trays"), from)
            : from.Any(place => place.Trays < 0) ? (null, [])
            : (from.Sum(place => place.Trays), from);
    }

    private static ImmutableArray<StandsOn> PlacesOf(IFormCollection form) =>
    [
        .. form.Where(field => field.Key.StartsWith(TierPrefix, StringComparison.Ordinal))
            .Select(field => new StandsOn(field.Key[TierPrefix.Length..], WholeOf(form, field.Key) ?? -1))
            .Where(place => place.Trays != 0),
    ];

    private static int? WholeOf(IFormCollection form, string name) => form[name].ToString() is var text && text.Length == 0 ? 0
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) ? whole : null;

    private static double? WeightOf(IFormCollection form) => form["weight"].ToString() is var text && text.Length == 0 ? 0
        : double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var g) ? g : null;

    private FormField Day() =>
        new("day", "Day", "date", LocalDatePattern.Iso.Format(today)) { Most = LocalDatePattern.Iso.Format(today), IsRequired = true };

    private static FormField Text(string name, string label, bool isRequired, string value = "") =>
        new(name, label, "text", value) { IsRequired = isRequired, Most = $"{BookRules.MostText}" };

    private static FormField Number(string name, string label, double value, double least, double most, string step) =>
        new(name, label, "number", value.ToString(CultureInfo.InvariantCulture))
        {
            Least = least.ToString(CultureInfo.InvariantCulture),
            Most = most.ToString(CultureInfo.InvariantCulture),
            Step = step,
            IsRequired = true,
        };
}
