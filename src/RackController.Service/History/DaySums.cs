using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Growing;
using RackController.Model;

namespace RackController.Service;

/// <summary>Sums up a day out of the journal, so that a few numbers outlast the samples.</summary>
internal static class DaySums
{
    private const double WattsPerKilowatt = 1000;

    /// <summary>Sums up one day; nothing where the controller did not run.</summary>
    /// <param name="journal">The journal.</param>
    /// <param name="site">The site.</param>
    /// <param name="day">A day that is over, in the zone of the site.</param>
    public static ImmutableArray<DaySum> Of(JournalHistory journal, Site site, LocalDate day)
    {
        var span = new HistorySpan(site.Zone.AtStartOfDay(day).ToInstant(), site.Zone.AtStartOfDay(day.PlusDays(1)).ToInstant());
        var measured = Measured(journal, site, span, day).ToList();
        return measured.Count == 0 && !journal.EventsIn(span).Any()
            ? []
            : [.. measured, .. Loads(journal, site, span, day), .. site.Racks.SelectMany(rack => Floods(journal, site, rack, span, day))];
    }

    private static IEnumerable<DaySum> Measured(JournalHistory journal, Site site, HistorySpan span, LocalDate day)
    {
        var sensors = site.Sensors.Where(sensor => !sensor.IsContact).Select(sensor => sensor.Name).ToList();
        return SensorTrend.Of(journal.SamplesIn(span), sensors, span, mostPoints: 1).Where(trend => !trend.Points.IsEmpty)
            .Select(trend => (trend.Sensor, Point: trend.Points[0]))
            .Select(at => new DaySum(day, at.Sensor, DayFigure.Measured, at.Point.Least, at.Point.Mean, at.Point.Most));
    }

    private static IEnumerable<DaySum> Loads(JournalHistory journal, Site site, HistorySpan span, LocalDate day)
    {
        var powerW = site.Loads.ToDictionary(load => load.Name, load => load.PowerW);
        var ppfd = site.Racks.SelectMany(rack => rack.Tiers).Where(tier => tier.Light is not null && tier.PpfdUmolPerM2S > 0)
            .ToDictionary(tier => site[tier.Light!.Value].Name, tier => tier.PpfdUmolPerM2S);
        foreach (var load in LoadTimes.Of(journal.EventsBackwards(EventKind.Load), site.Loads, span, journal.Begins()))
        {
            var hours = load.On.Sum(on => on.Length.TotalHours);
            yield return One(day, load.Load, DayFigure.HoursOn, hours);
            yield return One(day, load.Load, DayFigure.EnergyKWh, hours * powerW[load.Load] / WattsPerKilowatt);
            if (ppfd.TryGetValue(load.Load, out var ppfdUmolPerM2S))
            {
                yield return One(day, load.Load, DayFigure.LightMolPerM2, DailyLight.MolPerM2(ppfdUmolPerM2S, Duration.FromHours(hours)));
            }
        }
    }

    private static IEnumerable<DaySum> Floods(JournalHistory journal, Site site, Rack rack, HistorySpan span, LocalDate day)
    {
        var floods = new FloodLog(site, rack).Read(journal, span, []);
        yield return One(day, rack.Name, DayFigure.Floods, floods.Length);
        if (floods.Any(flood => flood.VolumeL is not null))
        {
            yield return One(day, rack.Name, DayFigure.WaterL, floods.Sum(flood => flood.VolumeL ?? 0));
        }
    }

    private static DaySum One(LocalDate day, string subject, DayFigure figure, double value) =>
        new(day, subject, figure, value, value, value);
}
