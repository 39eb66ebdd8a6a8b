using System.Diagnostics;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Testing;
using Xunit.Abstractions;

namespace RackController.Service.Tests;

/// <summary>How large the journal of a rack becomes, and how long looking back takes. Figures are printed, not asserted.</summary>
public sealed class YearOfHistoryTests(ITestOutputHelper output) : IDisposable
{
    private const int DaysOfSamples = 90;
    private const int DaysOfEvents = 365;
    private const int EventsPerDay = 160;

    private static readonly Instant end = Happenings.Noon;

    private readonly TemporaryFolder folder = new();

    [Fact]
    public void LookingBackAtAYearFindsItsEnds()
    {
        var site = RackFileReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml")).Site!;
        using var journal = new MadeUpJournal(folder.File("journal.db"));
        Fill(journal, site);
        using var history = journal.Read();
        output.WriteLine($"a year of events, 90 days of samples: {new FileInfo(journal.Path).Length / 1e6:0.0} MB");

        var sensors = site.Sensors.Where(sensor => !sensor.IsContact).Select(sensor => sensor.Name).ToList();
        foreach (var days in (int[])[1, 7, 31, 90])
        {
            var span = new HistorySpan(end - Duration.FromDays(days), end);
            var trends = Measure($"{days} days of {sensors.Count} sensors", () => SensorTrend.Of(history.SamplesIn(span), sensors, span));
            Assert.All(trends, trend => Assert.InRange(trend.Points.Length, 590, SensorTrend.MostPoints));
        }

        var year = new HistorySpan(end - Duration.FromDays(365), end);
        Assert.Equal(DaysOfEvents * EventsPerDay, Measure("a year of events", () => history.EventsIn(year).Count()));
        Assert.Equal(DaysOfEvents, Measure("a year of alarms", () => history.EventsIn(year, EventKind.Alarm).Count()));
        Assert.NotEmpty(Measure("upkeep, with no day of it summed up", () => UpkeepList.Read(site, history, [], end).Works));
        Assert.Empty(Measure("events of a name that is nowhere", () => history.EventPage(new EventFilter(null, "nobody"), null, 100)));
    }

    public void Dispose() => folder.Dispose();

    private static void Fill(MadeUpJournal journal, Site site)
    {
        for (var day = DaysOfEvents; day > 0; day--)
        {
            var begin = end - Duration.FromDays(day);
            journal.Add([.. Enumerable.Range(0, EventsPerDay).Select(at => MadeUpJournal.Event(
                begin + Duration.FromMinutes(9 * at), at == 0 ? EventKind.Alarm : EventKind.Load, "north/exhaust fan", "on",
                "north/air humidity rises above 65 %"))]);
            if (day <= DaysOfSamples)
            {
                journal.Add([.. Enumerable.Range(0, 1440).SelectMany(minute => site.Sensors.Where(sensor => !sensor.IsContact)
                    .Select(sensor => new Sample(begin + Duration.FromMinutes(minute), sensor.Name, minute / 7.0)))]);
            }
        }
    }

    private T Measure<T>(string what, Func<T> look)
    {
        var watch = Stopwatch.StartNew();
        var found = look();
        output.WriteLine($"{what}: {watch.ElapsedMilliseconds} ms");
        return found;
    }
}
