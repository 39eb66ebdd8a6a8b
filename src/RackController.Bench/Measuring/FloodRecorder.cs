using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Follows the floods of one rack and writes each down once its trays are empty.</summary>
internal sealed class FloodRecorder(Rack rack)
{
    /// <summary>About as many as a rack with eight floods a day has in a year.</summary>
    internal const int MostRecords = 3_000;

    private readonly Queue<FloodRecord> records = [];
    private readonly TrayRecorder[] trays = [.. rack.Tiers.Select(tier => new TrayRecorder(tier))];
    private FloodPhase phase;
    private bool isOpen;
    private Instant startedAt;
    private Duration started;
    private Duration pumpStopped;
    private Duration pumpRan;
    private bool pumpWasOn;

    public RackId Rack => rack.Id;

    /// <summary>The floods, in order; of a run of years only the newest of them.</summary>
    public IReadOnlyCollection<FloodRecord> Records => records;

    /// <summary>What all of them came to.</summary>
    public FloodTotals Totals { get; private set; } = FloodTotals.None(rack);

    /// <summary>Looks at one moment.</summary>
    /// <returns>Whether a flood began.</returns>
    public bool Look(IObserved now)
    {
        pumpRan += isOpen && pumpWasOn ? now.SinceBefore : Duration.Zero;
        var before = phase;
        phase = now.Flood(rack.Id);
        var begins = phase == FloodPhase.Filling && before != FloodPhase.Filling;
        if (begins)
        {
            Close();
            Open(now);
        }

        var pumpIsOn = now.IsPowered(rack.Pump.Load);
        pumpStopped = pumpWasOn && !pumpIsOn ? now.Elapsed : pumpStopped;
        pumpWasOn = pumpIsOn;
        if (isOpen)
        {
            Follow(now, pumpIsOn);
        }

        return begins;
    }

    /// <summary>Writes down the flood that is still under way.</summary>
    public void Close()
    {
        if (isOpen)
        {
            WriteDown(new FloodRecord(rack.Id, startedAt, started, pumpRan, [.. trays.Select(tray => tray.Record())]));
            isOpen = false;
        }
    }

    private void WriteDown(FloodRecord flood)
    {
        Totals = Totals.With(flood);
        records.Enqueue(flood);
        if (records.Count > MostRecords)
        {
            records.Dequeue();
        }
    }

    private void Open(IObserved now)
    {
        isOpen = true;
        startedAt = now.At;
        started = now.Elapsed;
        pumpRan = Duration.Zero;
        foreach (var tray in trays)
        {
            tray.Begin();
        }
    }

    private void Follow(IObserved now, bool pumpIsOn)
    {
        var hasStopped = !pumpIsOn && pumpRan > Duration.Zero;
        var isEmpty = hasStopped;
        foreach (var tray in trays)
        {
            isEmpty &= tray.Look(
                now.TrayDepthMm(rack.Id, tray.Number), now.Elapsed - started, hasStopped ? now.Elapsed - pumpStopped : null);
        }

        if (isEmpty)
        {
            Close();
        }
    }
}
