using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>Full floats of trays that were dry when a pump started: one that closes has seen the fill.</summary>
internal sealed class FloatsClosing(ImmutableArray<Sensor> floats)
{
    private readonly bool[] wereDry = new bool[floats.Length];

    /// <summary>The pump has started.</summary>
    public void Begin(Facts facts)
    {
        for (var i = 0; i < floats.Length; i++)
        {
            wereDry[i] = facts.IsOpen(floats[i].Id) && facts.IsTierInUse(floats[i].Rack!.Value, floats[i].TierNumber!.Value);
        }
    }

    /// <summary>Whether one has closed since.</summary>
    public bool AnyHasClosed(Facts facts)
    {
        for (var i = 0; i < floats.Length; i++)
        {
            if (wereDry[i] && facts.IsClosed(floats[i].Id))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether one could be believed then and can be now.</summary>
    public bool CouldTell(Facts facts)
    {
        for (var i = 0; i < floats.Length; i++)
        {
            if (wereDry[i] && facts.IsKnown(floats[i].Id))
            {
                return true;
            }
        }

        return false;
    }
}
