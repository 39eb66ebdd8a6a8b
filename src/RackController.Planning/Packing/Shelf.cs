using System.Collections.Immutable;
using RackController.Growing;

namespace RackController.Planning;

/// <summary>Trays of one batch, with what they need.</summary>
/// <param name="Batch">The batch's number.</param>
/// <param name="Stage">The number of the stage that it is in; null where it only stands there from before.</param>
/// <param name="Leaves">The number of the span in which it leaves: those that leave together stand well together.</param>
internal readonly record struct Guest(int Batch, int? Stage, int Leaves);

/// <summary>What stands on one tier while a plan is laid out.</summary>
/// <param name="tier">Its place in the plan's space.</param>
/// <param name="places">How many insert trays it holds.</param>
/// <param name="hours">Hours a day that each stage may be lit there; null where it does not suit.</param>
internal sealed class Shelf(int tier, int places, ImmutableArray<Bounds?> hours)
{
    private readonly SortedDictionary<int, (Guest Guest, int Trays)> standing = [];

    /// <summary>Its place in the plan's space.</summary>
    public int Tier => tier;

    /// <summary>Places that are free.</summary>
    public int Free => places - Trays;

    /// <summary>Trays that stand on it.</summary>
    public int Trays => standing.Values.Sum(one => one.Trays);

    /// <summary>Whether nothing stands on it.</summary>
    public bool IsEmpty => standing.Count == 0;

    /// <summary>The hours a day that suit all who stand on it.</summary>
    public Bounds Hours => standing.Values.Aggregate(new Bounds(0, 24), (all, one) => all.Within(HoursOf(one.Guest)));

    /// <summary>Who stands on it, and with how many trays.</summary>
    public ImmutableArray<(Guest Guest, int Trays)> Guests => [.. standing.Values];

    /// <summary>Whether somebody agrees with all who stand on it.</summary>
    /// <param name="guest">Who would come.</param>
    public bool Agrees(Guest guest) => Hours.Within(HoursOf(guest)).IsPossible;

    /// <summary>How badly somebody fits in by the time of leaving, in spans; 0 on an empty tier.</summary>
    /// <param name="guest">Who would come.</param>
    public int Mismatch(Guest guest) => standing.Values.Select(one => Math.Abs(one.Guest.Leaves - guest.Leaves)).DefaultIfEmpty().Max();

    /// <summary>How many trays of a batch stand on it.</summary>
    /// <param name="batch">The batch's number.</param>
    public int TraysOf(int batch) => standing.TryGetValue(batch, out var one) ? one.Trays : 0;

    /// <summary>Puts trays on it.</summary>
    /// <param name="guest">Whose.</param>
    /// <param name="trays">How many, at most <see cref="Free"/>.</param>
    public void Put(Guest guest, int trays) => standing[guest.Batch] = (guest, TraysOf(guest.Batch) + trays);

    /// <summary>Takes all trays of a batch off it.</summary>
    /// <param name="batch">The batch's number.</param>
    public void Remove(int batch) => standing.Remove(batch);

    /// <summary>Takes everything off it.</summary>
    public void Clear() => standing.Clear();

    private Bounds HoursOf(Guest guest) => guest.Stage is { } stage ? hours[stage]!.Value : new Bounds(0, 24);
}
