using System.Collections.Immutable;
using NodaTime;

namespace RackController.Bench;

/// <summary>How soon the controller noticed one mode striking alone.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Cases">In how many cases it struck alone.</param>
/// <param name="Tripped">In how many an interlock acted and told of it.</param>
/// <param name="MedianTrip">From the strike to that, in half of them; null where none acted.</param>
/// <param name="WorstTrip">From the strike to that, at worst.</param>
/// <param name="Alarmed">In how many an alarm was raised.</param>
/// <param name="MedianAlarm">From the strike to that, in half of them; null where none was raised.</param>
/// <param name="WorstAlarm">From the strike to that, at worst.</param>
public sealed record TripTimes(
    FaultMode Mode, int Cases, int Tripped, Duration? MedianTrip, Duration? WorstTrip, int Alarmed, Duration? MedianAlarm,
    Duration? WorstAlarm)
{
    internal static ImmutableArray<TripTimes> Of(ImmutableArray<CaseOutcome> outcomes) =>
    [
        .. from outcome in outcomes
           where outcome.Case.Faults.Length == 1
           group outcome by outcome.Case.Faults[0].Instance.Mode.Id into mode
           let trips = mode.Select(one => one.ToTrip).OfType<Duration>().Order().ToList()
           let alarms = mode.Select(one => one.ToAlarm).OfType<Duration>().Order().ToList()
           select new TripTimes(
               mode.First().Case.Faults[0].Instance.Mode, mode.Count(), trips.Count, Median(trips), Last(trips), alarms.Count,
               Median(alarms), Last(alarms)),
    ];

    private static Duration? Median(List<Duration> sorted) => sorted.Count == 0 ? null : sorted[(sorted.Count - 1) / 2];

    private static Duration? Last(List<Duration> sorted) => sorted.Count == 0 ? null : sorted[^1];
}
