using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control.Tests;

/// <summary>What is remembered, so that two moments can be compared: ages as the times that they stand for, and without what changes all
/// the time.</summary>
internal static class KeptItems
{
    // A run under way is kept by the saves round it, and a relay's operations and the time with whatever else is.
    private static readonly string[] unsaid = ["/used", "/operations", "/clock"];
    private static readonly string[] ages = [" age", "/last-flood"];

    public static ImmutableArray<KeyValuePair<string, double>> Of(ControlMemory memory, Moment now) =>
    [
        .. from item in memory.Items
           where !EndsWithAny(item.Key, unsaid)
           let value = EndsWithAny(item.Key, ages) ? now.Monotonic.Nanoseconds / 1e6 - item.Value : item.Value
           select KeyValuePair.Create(item.Key, value),
    ];

    /// <summary>Whether they are the same; times move by no more than their last digit.</summary>
    public static bool AreSame(
        ImmutableArray<KeyValuePair<string, double>> kept, ImmutableArray<KeyValuePair<string, double>> now) =>
        kept.Length == now.Length
        && kept.Zip(now).All(pair => pair.First.Key == pair.Second.Key
            && Math.Abs(pair.First.Value - pair.Second.Value) <= (EndsWithAny(pair.First.Key, ages) ? 1 : 0));

    private static bool EndsWithAny(string key, string[] ends) => ends.Any(end => key.EndsWith(end, StringComparison.Ordinal));
}
