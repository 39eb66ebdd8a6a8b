using NodaTime;
using RackController.Model;

namespace RackController.Plant;

/// <summary>Watches the quantities of one rack for passing levels, and knows the exact time of the next.</summary>
internal sealed class LevelWatch(RackDynamics dynamics, RackCurves curves)
{
    private static readonly Duration Nanosecond = Duration.FromNanoseconds(1);

    private readonly List<WatchedQuantity> quantities = [];
    private long seenSteps = -1;
    private MonotonicTime next;
    private bool moved;

    /// <summary>When the next level is passed within the step in hand; <see cref="MonotonicTime.Never"/> when none is.</summary>
    public MonotonicTime Next
    {
        get
        {
            Look();
            return next;
        }
    }

    /// <summary>Watches a level.</summary>
    /// <param name="quantity">Of what.</param>
    /// <param name="tier">Tier, from 0; null for the whole rack.</param>
    /// <param name="level">The level, in the unit of the quantity.</param>
    public Threshold Add(RackQuantity quantity, int? tier, double level)
    {
        if (Find(quantity, tier) is not { } watched)
        {
            watched = new WatchedQuantity(quantity, tier);
            quantities.Add(watched);
        }

        var reading = curves.Reading(quantity, tier, level);
        watched.Add(reading);
        seenSteps = -1;
        Look();
        moved = false;
        return new Threshold(this, watched, reading);
    }

    /// <summary>The rack has moved on in time, not beyond <see cref="Next"/>, or its state was changed.</summary>
    /// <returns>Whether a level was passed.</returns>
    public bool Reach()
    {
        Look();
        if (next <= dynamics.Now)
        {
            Pass();
        }

        var passed = moved;
        moved = false;
        return passed;
    }

    /// <summary>Looks at the step in hand, if that is a new one: whatever else it began with, it runs differently.</summary>
    public void Look()
    {
        _ = dynamics.KnownUntil;
        if (seenSteps == dynamics.Steps)
        {
            return;
        }

        seenSteps = dynamics.Steps;
        foreach (var watched in quantities)
        {
            moved |= watched.Place(curves.Of(watched.Quantity, watched.Tier), dynamics.Share, Resolution);
        }

        FindNext();
    }

    private WatchedQuantity? Find(RackQuantity quantity, int? tier)
    {
        foreach (var watched in quantities)
        {
            if (watched.Quantity == quantity && watched.Tier == tier)
            {
                return watched;
            }
        }

        return null;
    }

    private void Pass()
    {
        foreach (var watched in quantities)
        {
            if (watched.NextAt <= dynamics.Now)
            {
                watched.Pass(curves.Of(watched.Quantity, watched.Tier), Resolution);
                moved = true;
            }
        }

        FindNext();
    }

    private void FindNext()
    {
        next = MonotonicTime.Never;
        foreach (var watched in quantities)
        {
            watched.NextAt = watched.NextShare <= 1 ? TimeOf(watched) : MonotonicTime.Never;
            next = MonotonicTime.Earlier(next, watched.NextAt);
        }
    }

    // The search and a reader round differently, which shows where a level is passed at the very time of a scan: the reader's word is the
    // one that counts, within the nanosecond to which the search is certain.
    private MonotonicTime TimeOf(WatchedQuantity watched)
    {
        var found = dynamics.TimeAt(watched.NextShare);
        var whole = curves.Of(watched.Quantity, watched.Tier);
        var sooner = found + -Nanosecond;
        if (sooner > dynamics.Now && watched.IsPassedAt(whole, dynamics.ShareAt(sooner)))
        {
            return sooner;
        }

        var later = MonotonicTime.Earlier(found + Nanosecond, dynamics.KnownUntil);
        return !watched.IsPassedAt(whole, dynamics.ShareAt(found)) && watched.IsPassedAt(whole, dynamics.ShareAt(later)) ? later : found;
    }

    private double Resolution => 1e-9 / dynamics.StepS;
}
