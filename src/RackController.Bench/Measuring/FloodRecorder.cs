using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Follows the floods of one rack and writes each down once its trays are empty.</summary>
internal sealed class FloodRecorder(Rack rack)
{
    private readonly List<FloodRecord> records = [];
    private readonly TrayRecorder[] trays = [.. rack.Tiers.Select(tier => new TrayRecorder(tier))];
    private FloodPhase phase;
    private bool isOpen;
    private Instant startedAt;
    private Duration started;
    private Duration pumpStopped;
    private Duration pumpRan;
    private bool pumpWasOn;

    public RackId Rack => rack.Id;

    public IReadOnlyList<FloodRecord> Records => records;

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
            records.Add(new FloodRecord(rack.Id, startedAt, started, pumpRan, [.. trays.Select(tray => tray.Record())]));
            isOpen = false;
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
