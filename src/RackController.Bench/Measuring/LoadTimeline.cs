using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>When each load was really powered, as stretches of time for a chart.</summary>
internal sealed class LoadTimeline(Site site)
{
    private readonly Duration?[] since = new Duration?[site.Loads.Length];
    private readonly List<PoweredStretch> stretches = [];

    public IReadOnlyList<PoweredStretch> Stretches => stretches;

    public void Note(LoadId load, bool isPowered, Duration elapsed)
    {
        ref var open = ref since[load.Index];
        if (isPowered)
        {
            open ??= elapsed;
        }
        else if (open is { } from)
        {
            stretches.Add(new PoweredStretch(load, from, elapsed));
            open = null;
        }
    }

    public void Close(Duration end)
    {
        foreach (var load in site.Loads)
        {
            Note(load.Id, isPowered: false, end);
        }
    }
}

/// <summary>A stretch of time in which a load was powered.</summary>
/// <param name="Load">The load.</param>
/// <param name="From">Since the run began.</param>
/// <param name="Until">Since the run began.</param>
internal sealed record PoweredStretch(LoadId Load, Duration From, Duration Until);
