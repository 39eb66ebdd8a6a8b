using RackController.Model;

namespace RackController.Plant;

/// <summary>One quantity with the levels that matter, in rising order, and between which two of them it lies.</summary>
internal sealed class WatchedQuantity(RackQuantity quantity, int? tier)
{
    private readonly List<double> levels = [];
    private int below;
    private bool rises;

    public RackQuantity Quantity { get; } = quantity;

    /// <summary>Tier, from 0; null for the whole rack.</summary>
    public int? Tier { get; } = tier;

    /// <summary>The share of the step in hand at which it next passes one of its levels; infinite when it does not.</summary>
    public double NextShare { get; private set; }

    /// <summary>When that is; only its owner knows times. <see cref="MonotonicTime.Never"/> when it passes none.</summary>
    public MonotonicTime NextAt { get; set; } = MonotonicTime.Never;

    /// <summary>Whether the next level is passed where the curve stands at a share of the step in hand.</summary>
    public bool IsPassedAt(in Curve whole, double share) =>
        rises ? whole.At(share) >= levels[below] : whole.At(share) < levels[below - 1];

    /// <summary>Adds a level, as its curve reads it. To leave it upwards counts as passing, too: whoever asks for more than a limit is
    /// answered differently once a quantity that rested exactly on it rises.</summary>
    public void Add(double reading)
    {
        Insert(reading);
        Insert(Math.BitIncrement(reading));
    }

    private void Insert(double reading)
    {
        var place = levels.BinarySearch(reading);
        if (place < 0)
        {
            levels.Insert(~place, reading);
        }
    }

    /// <summary>Whether it lies at or above one of its levels.</summary>
    public bool IsAtLeast(double reading) => below > 0 && reading <= levels[below - 1];

    /// <summary>Finds between which levels a curve begins, and where it next leaves them.</summary>
    /// <param name="whole">The curve over the step in hand.</param>
    /// <param name="from">The share from which on to look.</param>
    /// <param name="resolution">Share of the step below which nothing is told apart.</param>
    /// <returns>Whether it lies elsewhere than before.</returns>
    public bool Place(in Curve whole, double from, double resolution)
    {
        var rest = from > 0 ? whole.After(from) : whole;
        var before = below;
        below = 0;
        while (below < levels.Count && levels[below] <= rest.First)
        {
            below++;
        }

        Search(rest, from, resolution);
        return below != before;
    }

    /// <summary>Passes the level that it has come to, and looks for the next.</summary>
    public void Pass(in Curve whole, double resolution)
    {
        var share = NextShare;
        below += rises ? 1 : -1;
        Search(whole.After(share), share, resolution);
    }

    private void Search(in Curve rest, double from, double resolution)
    {
        var up = below < levels.Count
            ? Crossing.First(rest, levels[below], rises: true, resolution)
            : double.PositiveInfinity;
        var down = below > 0
            ? Crossing.First(rest, levels[below - 1], rises: false, resolution)
            : double.PositiveInfinity;
        rises = up < down;
        NextShare = from + (1 - from) * Math.Min(up, down);
    }
}
