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
    public static ImmutableArray<Duration> FloodStarts(FloodsPart floods, RackPart rack)
    {
        var starts = floods.Times switch
        {
            FloodsAt at => at.Times.Select(SinceMidnight),
            FloodsEvery every => Spread(SinceMidnight(every.Start), every.Length, every.Interval),
            FloodsOverPhotoperiod over => OverPhotoperiod(over.Count, rack),
            NoFloods => [],
            _ => throw new InvariantBrokenException("every way to time floods has its starts"),
        };
        return [.. starts.Select(WithinDay).Distinct().Order()];
    }

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

    private static IEnumerable<Duration> OverPhotoperiod(int count, RackPart rack)
    {
        var lit = rack.Tiers
            .Select(tier => Lit(tier, rack.Schedule?.Lights))
            .OfType<(Duration Start, Duration Length)>()
            .ToArray();
        if (lit.Length == 0)
        {
            return Spread(Duration.Zero, Length, Length / count);
        }

        var first = lit.Min(one => one.Start);
        var span = Duration.Min(Length, lit.Max(one => one.Start + one.Length) - first);
        return Spread(first, span, span / count);
    }

    private static IEnumerable<Duration> Spread(Duration start, Duration length, Duration interval)
    {
        // Seven sevenths of a day fall short of it by nanoseconds, and what is left is no eighth flood.
        var slack = Duration.FromMilliseconds(1);
        for (var passed = Duration.Zero; passed == Duration.Zero || passed < length - slack; passed += interval)
        {
            yield return start + passed;
            if (interval <= slack)
            {
                yield break;
            }
        }
    }

    private static Duration SinceMidnight(LocalTime time) => Duration.FromNanoseconds(time.NanosecondOfDay);

    private static Duration WithinDay(Duration time)
    {
        var rest = time.ToInt64Nanoseconds() % NodaConstants.NanosecondsPerDay;
        return Duration.FromNanoseconds(rest < 0 ? rest + NodaConstants.NanosecondsPerDay : rest);
    }
}
