using System.Collections.Immutable;
using RackController.Control.Tests.Scanning;
using RackController.Model;

namespace RackController.Control.Tests;

/// <summary>Whoever saves goes by <see cref="RackControl.MemoryVersion"/>: what changes and does not raise it is lost in a power
/// cut.</summary>
public class RememberedTests
{
    // A run under way is kept by the saves round it, and a relay's operations and the time with whatever else is.
    private static readonly string[] unsaid = ["/used", "/operations", "/clock"];
    private static readonly string[] ages = [" age", "/last-flood"];

    [Theory]
    [Trait("Pace", "long")]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void WhateverIsRememberedOtherwiseRaisesTheVersion(int seed)
    {
        var story = RandomStory.Of(seed);
        var control = new RackControl(story.Site, story.Now, memory: null);
        var (version, kept) = (control.MemoryVersion, Kept(control, story.Now));
        foreach (var place in story.Scans(turns: 40))
        {
            if (story.StartsAnewAt is { } start)
            {
                control = new RackControl(story.Site, start, control.Save());
                (version, kept) = (control.MemoryVersion, Kept(control, story.Now));
            }

            var told = new Told();
            control.Scan(story.Now, story.Readings, story.Conditions, story.Requests, told);
            if (!told.Anything && !story.IsLastOfTurn)
            {
                continue;
            }

            var now = Kept(control, story.Now);
            Assert.True(
                control.MemoryVersion > version || (control.MemoryVersion == version && IsSame(kept, now)),
                $"{place}: {string.Join(", ", now.Except(kept).Concat(kept.Except(now)))} went unsaid");
            (version, kept) = (control.MemoryVersion, now);
        }
    }

    // Ages as the times that they stand for, which move by no more than their last digit.
    private static ImmutableArray<KeyValuePair<string, double>> Kept(RackControl control, Moment now) =>
    [
        .. from item in control.Save().Items
           where !EndsWithAny(item.Key, unsaid)
           let value = EndsWithAny(item.Key, ages) ? now.Monotonic.Nanoseconds / 1e6 - item.Value : item.Value
           select KeyValuePair.Create(item.Key, value),
    ];

    private static bool IsSame(
        ImmutableArray<KeyValuePair<string, double>> kept, ImmutableArray<KeyValuePair<string, double>> now) =>
        kept.Length == now.Length
        && kept.Zip(now).All(pair => pair.First.Key == pair.Second.Key
            && Math.Abs(pair.First.Value - pair.Second.Value) <= (EndsWithAny(pair.First.Key, ages) ? 1 : 0));

    private static bool EndsWithAny(string key, string[] ends) => ends.Any(end => key.EndsWith(end, StringComparison.Ordinal));

    private sealed class Told : IEventSink
    {
        public bool Anything { get; private set; }

        public void Take(ControlEvent happened) => Anything = true;
    }
}
