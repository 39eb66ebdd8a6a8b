using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What the crops of a site got in a run: every flood of every tray, and how long each light, fan and aerator worked. Held
/// against what they get when nothing fails, it says what a fault cost them.</summary>
internal sealed class CropDuties(Site site)
{
    private readonly Rack[] racks = [.. site.Racks];
    private readonly FloodPhase[] phases = new FloodPhase[site.Racks.Length];
    private readonly List<Instant>[] fills = [.. site.Racks.Select(_ => new List<Instant>())];
    private readonly List<Instant>[][] wetted = [.. site.Racks.Select(rack => rack.Tiers.Select(_ => new List<Instant>()).ToArray())];

    // In the flood under way.
    private readonly bool[][] isWet = [.. site.Racks.Select(rack => new bool[rack.Tiers.Length])];
    private readonly List<(Instant From, Instant Until)>[] powered = [.. site.Loads.Select(_ => new List<(Instant, Instant)>())];
    private readonly Instant?[] since = new Instant?[site.Loads.Length];

    /// <summary>When the fills of a rack began.</summary>
    public IReadOnlyList<Instant> FillsBegun(RackId rack) => fills[rack.Index];

    /// <summary>When a tray came to its flood depth, or stood there already, once for each flood.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="index">The tier, from 0.</param>
    public IReadOnlyList<Instant> Wetted(RackId rack, int index) => wetted[rack.Index][index];

    /// <summary>How long a load was powered within a time.</summary>
    public Duration Powered(LoadId load, Instant from, Instant until)
    {
        var sum = Duration.Zero;
        foreach (var stretch in powered[load.Index])
        {
            var (begin, end) = (Instant.Max(from, stretch.From), Instant.Min(until, stretch.Until));
            sum += end > begin ? end - begin : Duration.Zero;
        }

        return sum;
    }

    /// <summary>Looks at a moment.</summary>
    public void Look(IObserved now)
    {
        foreach (var rack in racks)
        {
            Water(rack, now);
        }

        foreach (var load in site.Loads)
        {
            Note(load.Id, now.IsPowered(load.Id), now.At);
        }
    }

    /// <summary>The run is over.</summary>
    public void Close(IObserved now)
    {
        foreach (var load in site.Loads)
        {
            Note(load.Id, isPowered: false, now.At);
        }
    }

    private void Water(Rack rack, IObserved now)
    {
        var phase = now.Flood(rack.Id);
        if (phase == FloodPhase.Filling && phases[rack.Id.Index] != FloodPhase.Filling)
        {
            fills[rack.Id.Index].Add(now.At);
            Array.Clear(isWet[rack.Id.Index]);
        }

        phases[rack.Id.Index] = phase;
        for (var index = 0; index < rack.Tiers.Length; index++)
        {
            var tier = rack.Tiers[index];
            var depthMm = now.TrayDepthMm(rack.Id, tier.Number);
            ref var wet = ref isWet[rack.Id.Index][index];
            if (!wet && (phase is FloodPhase.Filling or FloodPhase.Soaking) && depthMm >= tier.Tray.FilledMm)
            {
                wet = true;
                wetted[rack.Id.Index][index].Add(now.At);
            }
        }
    }

    private void Note(LoadId load, bool isPowered, Instant at)
    {
        ref var from = ref since[load.Index];
        if (isPowered)
        {
            from ??= at;
        }
        else if (from is { } begun)
        {
            powered[load.Index].Add((begun, at));
            from = null;
        }
    }
}
