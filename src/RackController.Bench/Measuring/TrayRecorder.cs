using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Follows one tray through one flood after another.</summary>
internal sealed class TrayRecorder(Tier tier)
{
    /// <summary>From this share of the standpipe's height on a tray counts as filled: the weep makes the last of it slow.</summary>
    internal const double FullShare = 0.9;

    /// <summary>A tray with less water than this counts as drained: the last film takes long to run off and drowns no root.</summary>
    internal const double EmptyMm = 3;

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
        filled ??= depthMm >= FullShare * tier.Tray.StandpipeHeightMm ? sinceStart : null;
        var isEmpty = depthMm < EmptyMm;
        drained = isEmpty && peakMm >= EmptyMm ? drained ?? sincePumpStopped : null;
        return isEmpty;
    }

    /// <summary>What the flood did to the tray.</summary>
    public TrayFlood Record() => new(tier.Number, peakMm, filled, drained);
}
