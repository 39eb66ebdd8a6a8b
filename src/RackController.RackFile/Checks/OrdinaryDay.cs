using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>When things begin on an ordinary day of 24 h, as time since midnight.</summary>
internal static class OrdinaryDay
{
    /// <summary>How long it is: no clock changes on it.</summary>
    public static Duration Length { get; } = Duration.FromDays(1);

    /// <summary>When floods begin, each within the day, in order.</summary>
    /// <param name="floods">The floods.</param>
    /// <param name="rack">Their rack, whose lights may decide.</param>
    public static ImmutableArray<Duration> FloodStarts(FloodsPart floods, RackPart rack) => floods.Times.StartsOn(
        rack.Tiers.Select(tier => Lit(tier, rack.Schedule?.Lights)).OfType<(Duration Start, Duration Length)>());

    /// <summary>When a tier's light comes on and for how long; null when never.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="lights">When lights come on.</param>
    public static (Duration Start, Duration Length)? Lit(TierPart tier, LightsPart? lights)
    {
        if (tier.Light is null || !tier.InUse || lights is null)
        {
            return null;
        }

        var photoperiod = lights.Of(tier.Number);
        return (WithinDay(SinceMidnight(photoperiod.Start) + lights.Stagger * (tier.Number - 1)), photoperiod.Length);
    }

    /// <summary>Whether a moment of the day lies within a span that may cross midnight.</summary>
    public static bool Covers(Duration start, Duration length, Duration moment) => WithinDay(moment - start) < length;

    private static Duration SinceMidnight(LocalTime time) => Duration.FromNanoseconds(time.NanosecondOfDay);

    private static Duration WithinDay(Duration time)
    {
        var rest = time.ToInt64Nanoseconds() % NodaConstants.NanosecondsPerDay;
        return Duration.FromNanoseconds(rest < 0 ? rest + NodaConstants.NanosecondsPerDay : rest);
    }
}
