using CsCheck;
using RackController.Control.Tests.Scanning;
using RackController.Model;

namespace RackController.Control.Tests.Recording;

/// <summary>What is on record runs Control again to the same commands and events, at the same moments and in the same words, whatever
/// happens: sensors that fail in every way, clocks that step and drift, scans that are late or fail, people, restarts.</summary>
public class RecordTests
{
    [Fact]
    [Trait("Pace", "long")]
    public void ARecordRunsControlAgainToTheSame() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Int[1, 60]).Sample(
            (seed, turns) =>
            {
                var story = RandomStory.Of(seed);
                var recorded = new Recorded(story);
                foreach (var _ in story.Scans(turns))
                {
                    recorded.Scan();
                }

                recorded.EndRun();
                Assert.True(recorded.ScansOnRecord <= recorded.Scans);
                foreach (var run in recorded.Runs)
                {
                    AssertRunsToTheSame(story.Site, run);
                }
            },
            iter: 40);

    private static void AssertRunsToTheSame(Site site, RecordedStory run)
    {
        var (events, commands) = PlayedBack.Of(site, run.Pages);
        for (var i = 0; i < Math.Min(run.Events.Count, events.Count); i++)
        {
            Assert.True(run.Events[i] == events[i], $"event {i}: {run.Events[i]}, played back {events[i]}");
        }

        Assert.Equal(run.Events.Count, events.Count);
        Assert.Equal(run.Commands, commands);
    }
}
