using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>When each load was really powered, as stretches of time for a chart. Of a load that came on more often than a chart
/// can show, neighbours are drawn as one stretch that is as long as they were together.</summary>
internal sealed class LoadTimeline(Site site)
{
    /// <summary>Several times as many stretches of one load as a screen has columns.</summary>
    internal const int MostStretches = 10_000;

    private readonly Duration?[] since = new Duration?[site.Loads.Length];
    private readonly Duration[] spacing = new Duration[site.Loads.Length];
    private readonly List<PoweredStretch>[] stretches = [.. site.Loads.Select(_ => new List<PoweredStretch>())];

    /// <summary>The stretches of one load, in order.</summary>
    public IReadOnlyList<PoweredStretch> Of(LoadId load) => stretches[load.Index];

    public void Note(LoadId load, bool isPowered, Duration elapsed)
    {
        ref var open = ref since[load.Index];
        if (isPowered)
        {
            open ??= elapsed;
        }
        else if (open is { } from)
        {
            open = null;
            Keep(load, new PoweredStretch(from, elapsed));
        }
    }

    public void Close(Duration end)
    {
        foreach (var load in site.Loads)
        {
            Note(load.Id, isPowered: false, end);
        }
    }

    private void Keep(LoadId load, PoweredStretch stretch)
    {
        var kept = stretches[load.Index];
        if (kept.Count > 0 && stretch.From - kept[^1].From < spacing[load.Index])
        {
            kept[^1] = kept[^1] with { Until = kept[^1].Until + (stretch.Until - stretch.From) };
            return;
        }

        kept.Add(stretch);
        if (kept.Count >= MostStretches)
        {
            spacing[load.Index] = Duration.Max(spacing[load.Index] * 2, stretch.Until * 4 / MostStretches);
            var all = kept.ToArray();
            kept.Clear();
            foreach (var each in all)
            {
                Keep(load, each);
            }
        }
    }
}

/// <summary>A stretch of time in which a load was powered.</summary>
/// <param name="From">Since the run began.</param>
/// <param name="Until">Since the run began.</param>
internal readonly record struct PoweredStretch(Duration From, Duration Until);
