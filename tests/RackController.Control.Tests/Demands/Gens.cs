using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Demands;

/// <summary>What a property of schedules is tried on.</summary>
/// <param name="Zone">One of the four zones of <see cref="ZoneTransitions"/>.</param>
/// <param name="Around">An instant within two days of one of their transitions.</param>
/// <param name="Photoperiod">Any photoperiod, often close to a whole day.</param>
/// <param name="Stagger">Any stagger.</param>
/// <param name="Times">Any plan of floods.</param>
internal sealed record MadeSchedule(
    DateTimeZone Zone, Instant Around, Photoperiod Photoperiod, Duration Stagger, FloodTimes Times);

/// <summary>Random schedules and instants, most of them near a change of the clock.</summary>
internal static class Gens
{
    private static readonly Gen<LocalTime> Times =
        Gen.Int[0, 24 * 60 - 1].Select(minute => LocalTime.FromMinutesSinceMidnight(minute));

    private static readonly Gen<Photoperiod> Photoperiods = Gen.Select(
        Times,
        Gen.OneOf(Gen.Int[0, 24 * 60], Gen.Int[23 * 60, 24 * 60]).Select(minutes => Duration.FromMinutes(minutes)),
        (start, length) => new Photoperiod(start, length));

    private static readonly Gen<FloodTimes> FloodTimes = Gen.OneOf(
        Times.Array[1, 8].Select(times => (FloodTimes)new FloodsAt([.. times.Distinct().Order()])),
        Gen.Select(Gen.Int[20, 600], Times, Gen.Int[1, 24 * 60], (interval, start, length) =>
            (FloodTimes)new FloodsEvery(Duration.FromMinutes(interval), start, Duration.FromMinutes(length))),
        Gen.Int[1, 24].Select(count => (FloodTimes)new FloodsOverPhotoperiod(count)));

    public static Gen<MadeSchedule> Schedules { get; } = Gen.Select(
        Gen.Int[0, ZoneTransitions.List.Count - 1],
        Gen.Int[-48 * 60, 48 * 60],
        Photoperiods,
        Gen.Int[0, 45],
        FloodTimes,
        (number, minutes, photoperiod, stagger, times) => new MadeSchedule(
            ZoneTransitions.List[number].DateTimeZone,
            ZoneTransitions.List[number].At + Duration.FromMinutes(minutes),
            photoperiod,
            Duration.FromMinutes(stagger),
            times));
}
