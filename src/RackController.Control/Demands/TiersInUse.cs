using RackController.Model;

namespace RackController.Control;

/// <summary>Which tiers take part. The rack file says so at first; what a person changed since is remembered, and only as
/// long as it departs from the file, so that an edited file is not overruled by memory.</summary>
internal sealed class TiersInUse
{
    private readonly Rack rack;
    private readonly string key;
    private readonly bool[] inUse;

    public TiersInUse(Rack rack, string key, MemoryReader memory)
    {
        this.rack = rack;
        this.key = key;
        inUse = [.. rack.Tiers.Select(tier => memory.Number(KeyOf(tier.Number)) is { } told ? told != 0 : tier.InUse)];
        Count = inUse.Count(each => each);
    }

    /// <summary>How many tiers take part.</summary>
    public int Count { get; private set; }

    public bool this[int number] => inUse[number - 1];

    /// <summary>Takes a tier into or out of use; false when it already is.</summary>
    public bool Set(int number, bool use)
    {
        if (inUse[number - 1] == use)
        {
            return false;
        }

        inUse[number - 1] = use;
        Count += use ? 1 : -1;
        return true;
    }

    public void Save(MemoryWriter writer)
    {
        foreach (var tier in rack.Tiers)
        {
            if (this[tier.Number] != tier.InUse)
            {
                writer.Put(KeyOf(tier.Number), this[tier.Number] ? 1 : 0);
            }
        }
    }

    private string KeyOf(int number) => $"{key}/tier-{number}-in-use";
}
