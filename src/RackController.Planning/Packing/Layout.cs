namespace RackController.Planning;

/// <summary>
/// Lays the trays of one class of tiers out, span after span. How many tiers may be lit is decided already. Whoever stands somewhere
/// stays there as long as it goes; where more tiers are lit than may be, the emptiest is cleared; and only where no such order of small
/// steps fits everybody in, the class is laid out anew by the groups that agree.
/// </summary>
/// <param name="tierClass">The class.</param>
internal sealed class Layout(TierClass tierClass)
{
    /// <summary>Its tiers.</summary>
    public IReadOnlyList<Shelf> Shelves { get; } =
    [
        .. tierClass.Tiers.Zip(tierClass.Hours, (tier, hours) => new Shelf(tier, tierClass.Places, hours)),
    ];

    /// <summary>Goes on to the next span.</summary>
    /// <param name="wanted">Who stands in this class now, with how many trays.</param>
    /// <param name="litOfGroups">How many tiers may be lit for each group.</param>
    public void Next(IReadOnlyList<(Guest Guest, int Trays)> wanted, IReadOnlyList<int> litOfGroups)
    {
        var before = Shelves.Select(shelf => shelf.Guests).ToList();
        Keep(wanted);
        while (Shelves.Count(shelf => !shelf.IsEmpty) > litOfGroups.Sum())
        {
            Shelves.Where(shelf => !shelf.IsEmpty).MinBy(shelf => shelf.Trays)!.Clear();
        }

        if (TryPlace(wanted, litOfGroups.Sum()))
        {
            return;
        }

        foreach (var (shelf, guests) in Shelves.Zip(before))
        {
            shelf.Clear();
            foreach (var (guest, trays) in guests)
            {
                shelf.Put(guest, trays);
            }
        }

        new Relayout(tierClass, Shelves).Run(wanted, litOfGroups);
    }

    // Who is still here stays, as far as that many are still wanted; who no longer agrees goes, the fewest trays first.
    private void Keep(IReadOnlyList<(Guest Guest, int Trays)> wanted)
    {
        var now = wanted.ToDictionary(one => one.Guest.Batch, one => one.Guest);
        var left = wanted.ToDictionary(one => one.Guest.Batch, one => one.Trays);
        foreach (var shelf in Shelves.OrderByDescending(shelf => shelf.Trays))
        {
            var stood = shelf.Guests;
            shelf.Clear();
            foreach (var (guest, trays) in stood.OrderByDescending(one => one.Trays))
            {
                if (now.TryGetValue(guest.Batch, out var one) && left[guest.Batch] > 0 && shelf.Agrees(one))
                {
                    var stays = Math.Min(trays, left[guest.Batch]);
                    shelf.Put(one, stays);
                    left[guest.Batch] -= stays;
                }
            }
        }
    }

    // Largest first; whole where it goes.
    private bool TryPlace(IReadOnlyList<(Guest Guest, int Trays)> wanted, int mayBeLit)
    {
        var waiting = wanted
            .Select(one => (one.Guest, Trays: one.Trays - Shelves.Sum(shelf => shelf.TraysOf(one.Guest.Batch))))
            .Where(one => one.Trays > 0)
            .OrderByDescending(one => one.Trays).ThenBy(one => one.Guest.Batch);
        foreach (var (guest, trays) in waiting)
        {
            var left = trays;
            while (left > 0)
            {
                if (BestFor(guest, left, mayBeLit) is not { } shelf)
                {
                    return false;
                }

                var here = Math.Min(left, shelf.Free);
                shelf.Put(guest, here);
                left -= here;
            }
        }

        return true;
    }

    // A tier that is lit and takes all of it, best one on which the others leave at the same time; else an empty one; else part of one.
    private Shelf? BestFor(Guest guest, int trays, int mayBeLit)
    {
        var open = Shelves.Where(shelf => !shelf.IsEmpty && shelf.Free > 0 && shelf.Agrees(guest)).ToList();
        var whole = open.Where(shelf => shelf.Free >= trays).OrderBy(shelf => shelf.Mismatch(guest)).ThenBy(shelf => shelf.Free)
            .FirstOrDefault();
        var empty = Shelves.Count(shelf => !shelf.IsEmpty) < mayBeLit ? Shelves.FirstOrDefault(shelf => shelf.IsEmpty) : null;
        return whole ?? empty ?? open.OrderByDescending(shelf => shelf.Free).ThenBy(shelf => shelf.Mismatch(guest)).FirstOrDefault();
    }
}
