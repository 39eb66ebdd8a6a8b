using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service.Tests;

/// <summary>Events and memory made up for a test.</summary>
internal static class Happenings
{
    public static readonly Instant Noon = Instant.FromUtc(2026, 6, 1, 12, 0);

    public static readonly RunFacts Facts = new(
        "made-up.yaml", "site: made up", "0.0.0", "2026a", new PartNames(["north"], ["north/pump"], []));

    public static ControlEvent Event(int number) => new(
        new Moment(MonotonicTime.FromMilliseconds(number), Noon + Duration.FromSeconds(number), true),
        EventKind.Load, "north/pump", number % 2 == 0 ? "on" : "off", $"number {number}");

    public static ControlMemory Memory(params (string Key, long Value)[] items) =>
        new(Noon, true, items.ToDictionary(item => item.Key, item => item.Value).ToSorted());

    private static System.Collections.Immutable.ImmutableSortedDictionary<string, long> ToSorted(this Dictionary<string, long> items) =>
        System.Collections.Immutable.ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, items);
}
