using RackController.Model;

namespace RackController.Bench;

/// <summary>The curves of a run that a report draws.</summary>
internal sealed class RunCharts
{
    private const double DepthToleranceMm = 0.5;
    private const double VolumeToleranceL = 0.25;
    private const double CurrentToleranceA = 0.02;
    private readonly Site site;

    public RunCharts(Site site)
    {
        this.site = site;
        Depths = [.. site.Racks.Select(rack => rack.Tiers.Select(tier => new Trend($"tier {tier.Number}", DepthToleranceMm)).ToArray())];
        Reservoirs = [.. site.Racks.Select(rack => new Trend(rack.Name, VolumeToleranceL))];
        Currents = [.. site.Circuits.Select(circuit => new Trend(circuit.Name, CurrentToleranceA))];
        Timeline = new LoadTimeline(site);
    }

    /// <summary>Tray depths by rack and tier, mm.</summary>
    public Trend[][] Depths { get; }

    /// <summary>Reservoir volumes by rack, L.</summary>
    public Trend[] Reservoirs { get; }

    /// <summary>Currents by circuit, A.</summary>
    public Trend[] Currents { get; }

    /// <summary>When each load was powered.</summary>
    public LoadTimeline Timeline { get; }

    public void Look(IObserved now)
    {
        foreach (var rack in site.Racks)
        {
            Reservoirs[rack.Id.Index].Add(now.Elapsed, now.ReservoirL(rack.Id));
            foreach (var tier in rack.Tiers)
            {
                Depths[rack.Id.Index][tier.Number - 1].Add(now.Elapsed, now.TrayDepthMm(rack.Id, tier.Number));
            }
        }

        foreach (var circuit in site.Circuits)
        {
            Currents[circuit.Id.Index].Add(now.Elapsed, now.CircuitA(circuit.Id));
        }

        foreach (var load in site.Loads)
        {
            Timeline.Note(load.Id, now.IsPowered(load.Id), now.Elapsed);
        }
    }

    public void Close(IObserved end)
    {
        Timeline.Close(end.Elapsed);
        foreach (var trend in Depths.SelectMany(trends => trends).Concat(Reservoirs).Concat(Currents))
        {
            trend.Close();
        }
    }
}
