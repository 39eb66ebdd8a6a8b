using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>The curves of a run that a report draws.</summary>
internal sealed class RunCharts
{
    private const double DepthToleranceMm = 0.5;
    private const double VolumeToleranceL = 0.25;
    private const double CurrentToleranceA = 0.02;
    private const double WarmthToleranceK = 0.05;
    private const double OxygenToleranceMgPerL = 0.05;
    private const double ConductivityToleranceMsPerCm = 0.002;
    private const double VapourToleranceKPa = 0.02;
    // Air, warmth and what is dissolved drift over minutes.
    private const double SlowEveryS = 60;

    private readonly Site site;
    private readonly double[] restDueS;
    private double slowDueS;

    public RunCharts(Site site)
    {
        this.site = site;
        restDueS = new double[site.Racks.Length];
        Depths = [.. site.Racks.Select(rack => rack.Tiers.Select(tier => new Trend($"tier {tier.Number}", DepthToleranceMm)).ToArray())];
        Reservoirs = [.. site.Racks.Select(rack => new Trend(rack.Name, VolumeToleranceL))];
        Warmth = [.. site.Racks.Select(rack => new Trend(rack.Name, WarmthToleranceK))];
        Oxygen = [.. site.Racks.Select(rack => new Trend(rack.Name, OxygenToleranceMgPerL))];
        Conductivity = [.. site.Racks.Select(rack => new Trend(rack.Name, ConductivityToleranceMsPerCm))];
        VapourDeficits =
        [
            .. site.Racks.Select(rack => rack.Tiers.Select(tier => new Trend($"tier {tier.Number}", VapourToleranceKPa)).ToArray()),
        ];
        Currents = [.. site.Circuits.Select(circuit => new Trend(circuit.Name, CurrentToleranceA))];
        Timeline = new LoadTimeline(site);
    }

    /// <summary>Tray depths by rack and tier, mm.</summary>
    public Trend[][] Depths { get; }

    /// <summary>Reservoir volumes by rack, L.</summary>
    public Trend[] Reservoirs { get; }

    /// <summary>Temperatures of the water by rack, degrees Celsius.</summary>
    public Trend[] Warmth { get; }

    /// <summary>Oxygen in the reservoirs by rack, mg/L.</summary>
    public Trend[] Oxygen { get; }

    /// <summary>Electrical conductivities of the reservoirs by rack, mS/cm.</summary>
    public Trend[] Conductivity { get; }

    /// <summary>Vapour pressure deficits of the air by rack and tier, kPa.</summary>
    public Trend[][] VapourDeficits { get; }

    /// <summary>Currents by circuit, A.</summary>
    public Trend[] Currents { get; }

    /// <summary>When each load was powered.</summary>
    public LoadTimeline Timeline { get; }

    public void Look(IObserved now)
    {
        var seconds = now.Elapsed.TotalSeconds;
        foreach (var rack in site.Racks)
        {
            if (seconds < restDueS[rack.Id.Index] && Rests(rack, now))
            {
                continue;
            }

            restDueS[rack.Id.Index] = seconds + SlowEveryS;
            Reservoirs[rack.Id.Index].Add(seconds, now.ReservoirL(rack.Id));
            foreach (var tier in rack.Tiers)
            {
                Depths[rack.Id.Index][tier.Number - 1].Add(seconds, now.TrayDepthMm(rack.Id, tier.Number));
            }
        }

        foreach (var circuit in site.Circuits)
        {
            Currents[circuit.Id.Index].Add(seconds, now.CircuitA(circuit.Id));
        }

        foreach (var load in site.Loads)
        {
            Timeline.Note(load.Id, now.IsPowered(load.Id), now.Elapsed);
        }

        if (seconds >= slowDueS)
        {
            LookAtWhatIsSlow(now, seconds);
            slowDueS = seconds + SlowEveryS;
        }
    }

    public void Close(IObserved end)
    {
        Timeline.Close(end.Elapsed);
        foreach (var trend in Depths.Concat(VapourDeficits).Concat([Reservoirs, Warmth, Oxygen, Conductivity, Currents])
            .SelectMany(trends => trends))
        {
            trend.Close();
        }
    }

    private static bool Rests(Rack rack, IObserved now) =>
        now.Flood(rack.Id) == FloodPhase.Idle && !now.IsPowered(rack.Pump.Load);

    private void LookAtWhatIsSlow(IObserved now, double seconds)
    {
        foreach (var rack in site.Racks)
        {
            Warmth[rack.Id.Index].Add(seconds, now.Value(rack.Id, RackQuantity.WaterTemperature, null));
            Oxygen[rack.Id.Index].Add(seconds, now.Value(rack.Id, RackQuantity.DissolvedOxygen, null));
            Conductivity[rack.Id.Index].Add(seconds, now.Value(rack.Id, RackQuantity.Conductivity, null));
            foreach (var tier in rack.Tiers)
            {
                VapourDeficits[rack.Id.Index][tier.Number - 1].Add(
                    seconds, now.Value(rack.Id, RackQuantity.VapourDeficit, tier.Number));
            }
        }
    }
}
