using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.Model;

namespace RackController.Service;

/// <summary>Adds up what a batch had while it grew, out of the sums of days, which are kept for good.</summary>
/// <param name="site">The site.</param>
/// <param name="history">The journal.</param>
public sealed class BatchSums(Site site, JournalHistory history)
{
    /// <summary>Adds it up.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="today">The local date: a day counts once it is over.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public GrownSums Of(BookedBatch batch, LocalDate today) => Of([batch], today)[0];

    /// <summary>Adds it up for several batches, reading the journal once.</summary>
    /// <param name="batches">The batches.</param>
    /// <param name="today">The local date: a day counts once it is over.</param>
    /// <returns>What each had, in the order of the batches.</returns>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public ImmutableArray<GrownSums> Of(ImmutableArray<BookedBatch> batches, LocalDate today)
    {
        var first = batches.Select(batch => batch.Sown?.Day).OfType<LocalDate>().DefaultIfEmpty(today).Min();
        var days = history.Days(first, today.PlusDays(-1)).GroupBy(sum => sum.Day)
            .Select(sums => (Day: sums.Key, Sums: sums.ToLookup(sum => (sum.Subject, sum.Figure)))).ToImmutableArray();
        return [.. batches.Select(batch => Of(batch, days))];
    }

    private GrownSums Of(
        BookedBatch batch, ImmutableArray<(LocalDate Day, ILookup<(string Subject, DayFigure Figure), DaySum> Sums)> all)
    {
        if (batch.Sown is not { } sown)
        {
            return GrownSums.None;
        }

        var byDate = site.Batches.MovesByDate;
        var days = all.Where(day => day.Day >= sown.Day && !(day.Day >= batch.GoneOn))
            .Select(day => (Places: batch.PlacesOn(day.Day, byDate)?.Places ?? [], day.Sums))
            .Where(day => !day.Places.IsEmpty)
            .ToImmutableArray();
        var floods = days.Select(day => ByTrays(day.Places, place => One(day.Sums, RackOf(place)?.Name, DayFigure.Floods)));
        var light = days.Select(day => ByTrays(day.Places, place => One(day.Sums, LightOf(place), DayFigure.LightMolPerM2)))
            .OfType<double>().ToImmutableArray();
        var air = days.SelectMany(day => day.Places.Select(AirOf).OfType<string>().Distinct()
            .SelectMany(sensor => day.Sums[(sensor, DayFigure.Measured)])).ToImmutableArray();
        return new GrownSums(
            days.Length, floods.Sum() ?? 0, light.IsEmpty ? null : light.Sum(),
            air.IsEmpty ? null : air.Min(sum => sum.Least), air.IsEmpty ? null : air.Average(sum => sum.Mean),
            air.IsEmpty ? null : air.Max(sum => sum.Most));
    }

    // What the trays had on average: they may stand on several tiers.
    private static double? ByTrays(ImmutableArray<StandsOn> places, Func<StandsOn, double?> figure)
    {
        var told = places.Select(place => (place.Trays, Figure: figure(place))).Where(one => one.Figure is not null).ToList();
        return told.Count == 0 ? null : told.Sum(one => one.Trays * one.Figure!.Value) / told.Sum(one => one.Trays);
    }

    private static double? One(ILookup<(string Subject, DayFigure Figure), DaySum> sums, string? subject, DayFigure figure) =>
        subject is null ? null : sums[(subject, figure)].FirstOrDefault()?.Mean;

    private Rack? RackOf(StandsOn place) => TierOf(place)?.Rack;

    private string? LightOf(StandsOn place) => TierOf(place) is { Tier.Light: { } light } ? site[light].Name : null;

    // The sensor of its tier, else the one of its rack.
    private string? AirOf(StandsOn place) => TierOf(place) is { } at
        ? site.Sensors.Where(sensor => sensor.Kind == SensorKind.AirTemperature && sensor.Rack == at.Rack.Id
                && (sensor.TierNumber is null || sensor.TierNumber == at.Tier.Number))
            .MaxBy(sensor => sensor.TierNumber ?? 0)?.Name
        : null;

    private (Rack Rack, Tier Tier)? TierOf(StandsOn place) => SiteTiers.Find(site, place.Tier);
}
