using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench.Tests;

/// <summary>A controller on a simulated site, scanned once a second and put on record.</summary>
internal sealed class RecordedDays : IEventSink
{
    private readonly List<ControlEvent> events = [];
    private readonly SimulatedSite plant;
    private readonly RackControl control;
    private readonly ScanRecorder recorder;
    private readonly Readings readings;
    private long late;
    private Moment now = new(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);

    public RecordedDays(Site site)
    {
        Site = site with { Scan = new ScanTiming(Duration.FromSeconds(1), Duration.FromSeconds(3)) };
        plant = new SimulatedSite(Site, PlantStart.Default);
        readings = new Readings(Site);
        control = new RackControl(Site, now, memory: null);
        recorder = new ScanRecorder(control, now, memory: null);
    }

    public Site Site { get; }

    public List<byte[]> Pages { get; } = [];

    public int Commands { get; private set; }

    /// <summary>Whether the record finds no room.</summary>
    public bool IsFull { get; set; }

    public RecordedRun Run => new(1, new RunFacts("made-up.yaml", "", "", "", PartNames.Of(Site)), Pages.Sum(page => page.Length), Pages);

    /// <summary>The pages, read.</summary>
    public IEnumerable<RecordedPage> Read => Pages.Select(page => RecordedPages.Read(page));

    public void Take(ControlEvent happened) => events.Add(happened);

    public void Live(Duration length, params OperatorRequest[] requests)
    {
        for (var end = now.Monotonic + length; now.Monotonic < end;)
        {
            // No board scans on the dot.
            late = (late + 7_919_113) % 30_000_000;
            var by = Site.Scan.Period + Duration.FromNanoseconds(late);
            now = now with { Monotonic = now.Monotonic + by, Wall = now.Wall + by };
            Scan(requests);
            requests = [];
        }
    }

    private void Scan(OperatorRequest[] requests)
    {
        events.Clear();
        plant.Read(now.Monotonic, readings);
        var commands = control.Scan(now, readings, ScanConditions.Good, requests, this);
        recorder.Note(
            now, readings, ScanConditions.Good, requests, commands,
            System.Runtime.InteropServices.CollectionsMarshal.AsSpan(events));
        plant.Write(now.Monotonic, commands);
        Commands += events.Count(happened => happened.Kind == EventKind.Load);
        if (!recorder.IsPageDue)
        {
            return;
        }

        var page = recorder.TakePage();
        if (IsFull)
        {
            recorder.LosePage();
        }
        else
        {
            Pages.Add(page.Body);
        }
    }
}
