using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.RackFile;
using RackController.RackFile.Binding;

namespace RackController.PlanFiles;

/// <summary>What reading an orders file came to.</summary>
/// <param name="Season">What is to be planned and foretold; null when it cannot be.</param>
/// <param name="Complaints">Everything that is wrong with it, its crops and its rack file, each with its file.</param>
/// <param name="CouldBeRead">Whether there was a file to judge at all.</param>
public sealed record OrdersReading(Season? Season, ImmutableArray<Complaint> Complaints, bool CouldBeRead = true);

/// <summary>What an orders file asks for.</summary>
/// <param name="Request">What is to be planned.</param>
/// <param name="Site">The racks that it is planned for.</param>
/// <param name="Forecast">What the forecast of the plan is told.</param>
public sealed record Season(PlanRequest Request, Site Site, ForecastTerms Forecast);

/// <summary>
/// Reads orders files, YAML of our own:
/// <code>
/// racks: demo-four-tier.yaml             # as seen from this file
/// crops: crops.yaml                      # what crops need; optional
/// work-days: [mon, tue, wed, thu, fri]
/// blackout: { trays: 24 }
/// margin: 10 %
/// from: 2026-03-02                       # optional; without it, today
/// until: 2026-05-24                      # optional; without it, 12 weeks on
/// standing:
///   - { customer: the inn, crop: radish, weight: 600 g, on: [tue, fri], from: 2026-03-17 }
/// dated:
///   - { customer: school fair, crop: sunflower, trays: 4, on: 2026-04-10 }
/// growing:
///   - { crop: pea, trays: 4, sown: 2026-02-23, lit: 2026-02-26, tier: north/tier 2 }
/// own-crops:
///   - { name: radish, yield: 320 g }     # what you know better
/// forecast:                              # optional
///   solution: { target: 1.2 mS/cm, tap: 0.4 mS/cm, change-every: 14 d, flush-every: 28 d }
///   prices: { currency: crowns, electricity-per-kwh: 0.28, water-per-m3: 4, salts-per-kg: 9 }
/// </code>
/// Whatever a person may have written, the answer is complaints and never an exception.
/// </summary>
public static class OrdersReader
{
    /// <summary>The file as a whole.</summary>
    internal static OrdersMapping Mapping { get; } = new();

    /// <summary>Reads an orders file, its crops and its rack file.</summary>
    /// <param name="path">Its path, which complaints repeat.</param>
    /// <param name="from">The first day of the plan, whatever the file says; null to let it say.</param>
    /// <param name="today">The local date at a place, by its zone; asked only when nobody says where the plan begins.</param>
    /// <param name="growing">The growing book that tells what grows already; null where the file does.</param>
    public static OrdersReading Read(
        string path, LocalDate? from, Func<DateTimeZone, LocalDate> today, GrowingBook? growing = null)
    {
        ArgumentNullException.ThrowIfNull(today);
        var complaints = new Complaints(path);
        var outcome = TextFile.Read(path, complaints, out var text);
        if (outcome != TextFileOutcome.Read)
        {
            return new OrdersReading(null, complaints.Sorted(), CouldBeRead: outcome != TextFileOutcome.Unreadable);
        }

        if (Bind(text, complaints) is not { } part)
        {
            return new OrdersReading(null, complaints.Sorted());
        }

        var rack = RackFileReader.Read(Beside(path, part.Racks));
        if (rack.Site is null)
        {
            complaints.Refuse(part.RacksPlace, $"the rack file {Quote.Text(part.Racks)} cannot be used",
                "see what is said of it, and put it right first");
        }

        var cropsPath = Beside(path, part.Crops);
        var ofCrops = new Complaints(cropsPath);
        var book = CropsReader.ReadInto(cropsPath, ofCrops, out _);
        if (ofCrops.HasErrors)
        {
            complaints.Refuse(part.CropsPlace, $"the crops file {Quote.Text(part.Crops)} cannot be used",
                "see what is said of it, and put it right first");
        }

        book.Add(part.OwnCrops, complaints);
        var season = rack.Site is { } site && !complaints.HasErrors
            && RequestBuilder.Build(part with { From = from ?? part.From }, site, book, today, growing, complaints) is { } request
            && IsPast(part, request.Today, complaints)
            ? new Season(request, site, part.Forecast) : null;
        return new OrdersReading(
            complaints.HasErrors ? null : season,
            [.. complaints.Sorted(), .. ofCrops.Sorted(), .. rack.Site is null ? rack.Complaints : []]);
    }

    // Whatever was done last was done before the plan begins.
    private static bool IsPast(OrdersPart part, LocalDate today, Complaints complaints)
    {
        foreach (var (key, day) in ((string, LocalDate?)[])[("changed", part.Forecast.Changed), ("flushed", part.Forecast.Flushed)])
        {
            if (day > today)
            {
                complaints.Refuse(part.ForecastPlace, $"`{key}` is after the plan's first day, {today:uuuu-MM-dd}",
                    "write when that was done last, or leave it out");
                return false;
            }
        }

        return true;
    }

    private static OrdersPart? Bind(string text, Complaints complaints)
    {
        if (YamlText.Read(text, complaints) is not { } root)
        {
            return null;
        }

        if (FileRecognition.KindOf(root) is PlainFile.Rack or PlainFile.Scenario or PlainFile.Crops)
        {
            complaints.Refuse(
                root.Place, "this is no orders file", "name one that says what is ordered, such as a copy of demo-orders.yaml");
            return null;
        }

        return Mapping.TryRead("orders file", root, complaints, out var part) ? part : null;
    }

    private static string Beside(string path, string named) => Path.Combine(Path.GetDirectoryName(path) ?? "", named);
}
