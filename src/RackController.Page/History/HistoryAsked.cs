using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Http;
using NodaTime;
using NodaTime.Text;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What somebody asks to see of the past.</summary>
/// <param name="Rack">Of which rack.</param>
/// <param name="Length">One of <see cref="HistoryAsked.Lengths"/>; empty where dates say it.</param>
/// <param name="Span">From when until when.</param>
/// <param name="First">The first day; null where a length says it.</param>
/// <param name="Last">The last day.</param>
/// <param name="Shown">Which charts; every one where none is named.</param>
/// <param name="Complaint">What could not be read of it, and what is shown instead; null when all could.</param>
public sealed record HistoryAsked(
    Rack Rack, string Length, HistorySpan Span, LocalDate? First, LocalDate? Last, ImmutableHashSet<string> Shown, string? Complaint)
{
    private const string Dates = "dates";

    /// <summary>Samples are kept for 90 days; what is longer is told by the sums of days.</summary>
    private static readonly Duration longestOfSamples = Duration.FromDays(92);

    /// <summary>The lengths that can be asked for, as an address and a person say them.</summary>
    public static readonly ImmutableArray<HistoryLength> Lengths =
    [
        new("6h", "6 hours", Duration.FromHours(6)), new("day", "a day", Duration.FromDays(1)),
        new("week", "a week", Duration.FromDays(7)), new("month", "a month", Duration.FromDays(31)),
        new("year", "a year, day by day", Duration.FromDays(365)),
    ];

    /// <summary>Reads it out of an address.</summary>
    public static HistoryAsked Of(IQueryCollection query, Site site, Instant now)
    {
        var (named, wanted, charts) = (query["rack"].ToString(), query["length"].ToString(), query["show"].OfType<string>().ToList());
        var rack = int.TryParse(named, CultureInfo.InvariantCulture, out var index) && index >= 0 && index < site.Racks.Length
            ? site.Racks[index]
            : site.Racks.FirstOrDefault(each => each.Name == named);
        var shown = charts.Where(key => ChartKind.All.Any(kind => kind.Key == key)).ToImmutableHashSet();
        var length = Lengths.FirstOrDefault(known => known.Key == wanted);
        var isOfDates = wanted == Dates || (wanted.Length == 0 && query.ContainsKey("first"));
        string?[] wrong =
        [
            rack is null && named.Length > 0 ? $"There is no rack `{named}`, so {site.Racks[0].Name} is shown." : null,
            length is null && !isOfDates && wanted.Length > 0 ? $"There is no length `{wanted}`, so a day is shown." : null,
            charts.Find(key => !shown.Contains(key)) is { } unknown ? $"There is no chart `{unknown}`." : null,
        ];
        var complaint = string.Join(' ', wrong.OfType<string>());
        length ??= Lengths[1];
        var asked = new HistoryAsked(
            rack ?? site.Racks[0], length.Key, new HistorySpan(now - length.Length, now), null, null, shown,
            complaint.Length > 0 ? complaint : null);
        return isOfDates ? OfDates(asked, query, site.Zone, now) : asked;
    }

    /// <summary>It as the part of an address behind the question mark.</summary>
    public string Query => string.Join('&', Parts());

    /// <summary>Whether it is told by the sums of days, since its samples are no more.</summary>
    public bool IsByDay => Span.Length > longestOfSamples;

    /// <summary>Whether a chart is asked for.</summary>
    public bool Shows(string key) => Shown.IsEmpty || Shown.Contains(key);

    private IEnumerable<string> Parts()
    {
        yield return $"rack={Rack.Id.Index}";
        yield return $"length={(First is null ? Length : Dates)}";
        if (First is { } first && Last is { } last)
        {
            yield return $"first={LocalDatePattern.Iso.Format(first)}&last={LocalDatePattern.Iso.Format(last)}";
        }

        foreach (var key in Shown.Order(StringComparer.Ordinal))
        {
            yield return $"show={key}";
        }
    }

    private static HistoryAsked OfDates(HistoryAsked instead, IQueryCollection query, DateTimeZone zone, Instant now)
    {
        var first = LocalDatePattern.Iso.Parse(query["first"].ToString());
        var last = LocalDatePattern.Iso.Parse(query["last"].ToString());
        if (!first.Success || !last.Success)
        {
            return instead with { Complaint = "The dates cannot be read, so the last day is shown: write both as 2026-11-30." };
        }

        var from = zone.AtStartOfDay(first.Value).ToInstant();
        var until = Instant.Min(zone.AtStartOfDay(last.Value.PlusDays(1)).ToInstant(), now);
        if (until <= from)
        {
            return instead with
            {
                Complaint = "The dates name no time that has passed, so the last day is shown: name an earlier one first.",
            };
        }

        return instead with
        {
            Length = "",
            First = first.Value,
            Last = last.Value,
            Span = new HistorySpan(from, until),
        };
    }
}

/// <summary>A length of time that can be asked for.</summary>
/// <param name="Key">As an address says it.</param>
/// <param name="Name">As a person says it.</param>
/// <param name="Length">How long it is.</param>
public sealed record HistoryLength(string Key, string Name, Duration Length);
