using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Floods to fit a rack to.</summary>
/// <param name="Floods">The floods, oldest first.</param>
/// <param name="On">The local date of the last.</param>
public sealed record TuneTimes(ImmutableArray<TimedFlood> Floods, LocalDate On)
{
    /// <summary>Floods that are on record.</summary>
    /// <param name="floods">The floods, oldest first: at least one, each with its time.</param>
    /// <param name="zone">Where the rack is.</param>
    public static TuneTimes OnRecord(ImmutableArray<TimedFlood> floods, DateTimeZone zone) =>
        new(floods, floods[^1].At!.Value.InZone(zone).Date);

    /// <summary>Floods that somebody timed by hand.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="fills">How long each tier took to fill, from the pump's start.</param>
    /// <param name="drains">How long each took to drain, from the pump's stop.</param>
    /// <param name="today">The local date.</param>
    public static TuneTimes ByHand(Rack rack, IReadOnlyList<HandTimes> fills, IReadOnlyList<HandTimes> drains, LocalDate today) =>
        new(HandTimes.Floods(rack, fills, drains), today);
}
