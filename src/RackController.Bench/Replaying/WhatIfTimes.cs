using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Adds up how long each load was on by the one file and by the other.</summary>
/// <param name="other">The site by the other file.</param>
internal sealed class WhatIfTimes(Site other)
{
    private readonly Times[] times = [.. other.Loads.Select(_ => new Times())];
    private MonotonicTime? last;

    /// <summary>How much time was passed.</summary>
    public Duration Told { get; private set; }

    /// <summary>Time passes up to a scan, with every load as it was told before.</summary>
    /// <param name="at">When the scan is.</param>
    /// <param name="isOnThen">Whether a load is on by the file on record; null when it is not in that one.</param>
    /// <param name="with">The controller by the other file.</param>
    public void Pass(MonotonicTime at, Func<LoadId, bool?> isOnThen, WhatIfSide with)
    {
        var passed = last is { } before ? at - before : Duration.Zero;
        last = at;
        Told += passed;
        foreach (var load in other.Loads)
        {
            times[load.Id.Index].Pass(passed, isOnThen(load.Id), with.IsOn(load.Id));
        }
    }

    /// <summary>Nothing is known until the next scan.</summary>
    public void Pause() => last = null;

    /// <summary>Takes note whether a load differs.</summary>
    /// <returns>Whether it did not before.</returns>
    public bool BeginsToDiffer(LoadId load, bool isDifferent)
    {
        var begins = isDifferent && !times[load.Index].IsDifferent;
        times[load.Index].IsDifferent = isDifferent;
        return begins;
    }

    /// <summary>The sums.</summary>
    public ImmutableArray<WhatIfLoad> Loads() =>
    [
        .. other.Loads.Select(load => (Load: load, Times: times[load.Id.Index])).Select(each => new WhatIfLoad(
            each.Load.Name, each.Times.IsKnown ? each.Times.Then : null, each.Times.With, each.Times.OnlyThen, each.Times.OnlyWith)),
    ];

    private sealed class Times
    {
        public bool IsDifferent { get; set; }

        public bool IsKnown { get; private set; }

        public Duration Then { get; private set; }

        public Duration With { get; private set; }

        public Duration OnlyThen { get; private set; }

        public Duration OnlyWith { get; private set; }

        public void Pass(Duration passed, bool? isOnThen, bool isOnWith)
        {
            IsKnown |= isOnThen is not null;
            Then += isOnThen == true ? passed : Duration.Zero;
            With += isOnWith ? passed : Duration.Zero;
            OnlyThen += isOnThen == true && !isOnWith ? passed : Duration.Zero;
            OnlyWith += isOnThen == false && isOnWith ? passed : Duration.Zero;
        }
    }
}
