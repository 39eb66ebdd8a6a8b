using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Lets latches go, by two independent actions: one names the latch, another confirms it within a time. A latch whose
/// cause is still there does not go.</summary>
internal sealed class LatchDesk(Site site, ImmutableArray<Interlock> interlocks)
{
    private readonly Duration confirmWithin = site.Racks.Min(rack => rack.Limits.ResetConfirmWithin);
    private Interlock? asked;
    private MonotonicTime askedAt;

    /// <summary>First action.</summary>
    public string Ask(string key, MonotonicTime now)
    {
        asked = null;
        var latch = interlocks.FirstOrDefault(interlock => interlock.Key == key);
        if (latch is not { IsLatched: true })
        {
            return $"{key} is not latched";
        }

        asked = latch;
        askedAt = now;
        return $"confirm within {confirmWithin.InWords()}";
    }

    /// <summary>Second action.</summary>
    /// <param name="key">Which latch.</param>
    /// <param name="now">The moment.</param>
    /// <param name="released">The racks whose loads it held or whose circuit it cut, if it is released; empty otherwise.</param>
    public string Confirm(string key, in Moment now, out ImmutableArray<RackId> released)
    {
        released = [];
        if (asked?.Key != key || now.Monotonic > askedAt + confirmWithin)
        {
            return "ask for the reset first, then confirm it";
        }

        var latch = asked;
        asked = null;
        if (!latch.TryReset())
        {
            return $"the latch stays, because {latch.Words(new ClockFace(now, site.Zone))}";
        }

        var cut = latch.MayCut.SelectMany(circuit => Contactors.RacksOn(site, circuit));
        released = [.. latch.Loads.Select(load => site[load].Rack).Concat(cut).Distinct()];
        return "the latch is released";
    }
}
