using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Follows one tray through one flood after another.</summary>
internal sealed class TrayRecorder(Tier tier)
{
    private double peakMm;
    private Duration? filled;
    private Duration? drained;

    public int Number => tier.Number;

    /// <summary>Begins a flood.</summary>
    public void Begin()
    {
        peakMm = 0;
        filled = null;
        drained = null;
    }

    /// <summary>Looks at one moment of the flood.</summary>
    /// <param name="depthMm">Depth of the water, mm.</param>
    /// <param name="sinceStart">Time since the fill began.</param>
    /// <param name="sincePumpStopped">Time since the pump stopped; null while it has not.</param>
    /// <returns>Whether the tray is empty.</returns>
    public bool Look(double depthMm, Duration sinceStart, Duration? sincePumpStopped)
    {
        peakMm = Math.Max(peakMm, depthMm);
        filled ??= depthMm >= tier.Tray.FilledMm ? sinceStart : null;
        var isEmpty = depthMm < FloodTray.DrainedBelowMm;
        drained = isEmpty && peakMm >= FloodTray.DrainedBelowMm ? drained ?? sincePumpStopped : null;
        return isEmpty;
    }

    /// <summary>What the flood did to the tray.</summary>
    public TrayFlood Record() => new(tier.Number, peakMm, filled, drained);
}
