using RackController.Control.Tests.Scanning;

namespace RackController.Control.Tests;

/// <summary>Whoever saves goes by <see cref="RackControl.MemoryVersion"/>: what changes and does not raise it is lost in a power
/// cut.</summary>
public class RememberedTests
{
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
        var (version, kept) = (control.MemoryVersion, KeptItems.Of(control.Save(), story.Now));
        foreach (var place in story.Scans(turns: 40))
        {
            if (story.StartsAnewAt is { } start)
            {
                control = new RackControl(story.Site, start, control.Save());
                (version, kept) = (control.MemoryVersion, KeptItems.Of(control.Save(), story.Now));
            }

            var told = new Told();
            control.Scan(story.Now, story.Readings, story.Conditions, story.Requests, told);
            if (!told.Anything && !story.IsLastOfTurn)
            {
                continue;
            }

            var now = KeptItems.Of(control.Save(), story.Now);
            Assert.True(
                control.MemoryVersion > version || (control.MemoryVersion == version && KeptItems.AreSame(kept, now)),
                $"{place}: {string.Join(", ", now.Except(kept).Concat(kept.Except(now)))} went unsaid");
            (version, kept) = (control.MemoryVersion, now);
        }
    }

    private sealed class Told : IEventSink
    {
        public bool Anything { get; private set; }

        public void Take(ControlEvent happened) => Anything = true;
    }
}
