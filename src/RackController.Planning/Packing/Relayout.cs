using RackController.Model;

namespace RackController.Planning;

/// <summary>Lays a class out anew: every tray joins a group that has room for it, every group gets its tiers, best those on which most
/// of it stands already, and who stands on the right tier stays there.</summary>
/// <param name="tierClass">The class.</param>
/// <param name="shelves">Its tiers, as they stood.</param>
internal sealed class Relayout(TierClass tierClass, IReadOnlyList<Shelf> shelves)
{
    /// <summary>Does it.</summary>
    /// <param name="wanted">Who stands in this class now, with how many trays.</param>
    /// <param name="litOfGroups">How many tiers may be lit for each group.</param>
    public void Run(IReadOnlyList<(Guest Guest, int Trays)> wanted, IReadOnlyList<int> litOfGroups)
    {
        var shares = Share(wanted, [.. litOfGroups.Select(tiers => tiers * tierClass.Places)]);
        var stood = shelves.ToDictionary(shelf => shelf, shelf => shelf.Guests.ToDictionary(one => one.Guest.Batch, one => one.Trays));
        var free = shelves.ToList();
        foreach (var shelf in shelves)
        {
            shelf.Clear();
        }

        for (var group = 0; group < litOfGroups.Count; group++)
        {
            var left = wanted.Index().ToDictionary(one => one.Item.Guest, one => shares[one.Index, group]);
            var taken = new List<Shelf>();
            while (taken.Count < litOfGroups[group])
            {
                var best = free.MaxBy(shelf => left.Sum(one => Math.Min(one.Value, stood[shelf].GetValueOrDefault(one.Key.Batch))))!;
                free.Remove(best);
                taken.Add(best);
                Fill(best, left, guest => stood[best].GetValueOrDefault(guest.Batch));
            }

            taken.ForEach(shelf => Fill(shelf, left, _ => int.MaxValue));
            Invariant.Holds(left.Values.All(trays => trays == 0), "the tiers of a group hold its trays");
        }
    }

    private static void Fill(Shelf shelf, Dictionary<Guest, int> left, Func<Guest, int> most)
    {
        foreach (var guest in left.Keys.ToList())
        {
            var here = Math.Min(Math.Min(left[guest], shelf.Free), most(guest));
            if (here > 0)
            {
                shelf.Put(guest, here);
                left[guest] -= here;
            }
        }
    }

    // Trays flow to the groups that they agree with; where one is full, somebody in it who could be elsewhere makes room.
    private int[,] Share(IReadOnlyList<(Guest Guest, int Trays)> wanted, int[] room)
    {
        var shares = new int[wanted.Count, room.Length];
        for (var one = 0; one < wanted.Count; one++)
        {
            for (var tray = 0; tray < wanted[one].Trays; tray++)
            {
                Invariant.Holds(TryAdd(wanted, shares, room, one, []), "every tray finds a group that has room");
            }
        }

        return shares;
    }

    private bool TryAdd(IReadOnlyList<(Guest Guest, int Trays)> wanted, int[,] shares, int[] room, int one, HashSet<int> asked)
    {
        foreach (var group in tierClass.GroupsOf(wanted[one].Guest.Stage!.Value).Where(asked.Add))
        {
            var used = Enumerable.Range(0, wanted.Count).Sum(other => shares[other, group]);
            var other = used < room[group] ? -1 : Enumerable.Range(0, wanted.Count)
                .FirstOrDefault(other => shares[other, group] > 0 && TryAdd(wanted, shares, room, other, asked), -2);
            if (other == -2)
            {
                continue;
            }

            shares[one, group]++;
            if (other >= 0)
            {
                shares[other, group]--;
            }

            return true;
        }

        return false;
    }
}
