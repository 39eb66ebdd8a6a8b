using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Recording;

/// <summary>A digest tells one scan's events from another's by anything that a person would call another event.</summary>
public class EventsDigestTests
{
    private static readonly Moment at = new(MonotonicTime.FromMilliseconds(5_000), Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
    private static readonly ControlEvent on = new(at, EventKind.Load, "north/pump", "on", "the flood of 07:00 is due");

    [Fact]
    public void OfNothingThereIsNone() => Assert.Null(EventsDigest.Of([]));

    [Fact]
    public void TheSameHasTheSameDigest() => Assert.Equal(EventsDigest.Of([on]), EventsDigest.Of([on with { }]));

    [Fact]
    public void AnotherKindSubjectOrOutcomeShows()
    {
        ControlEvent[] others =
        [
            on with { Kind = EventKind.Alarm },
            on with { Subject = "north/pumq" },
            on with { Subject = "north/pum", What = "pon" },
            on with { What = "off" },
            on with { What = "\u016Fn" },
        ];
        Assert.Equal(others.Length + 1, others.Append(on).Select(each => EventsDigest.Of([each])!.Value.What).Distinct().Count());
        Assert.Single(others.Append(on).Select(each => EventsDigest.Of([each])!.Value.Because).Distinct());
    }

    [Fact]
    public void OtherWordsShowByThemselves()
    {
        var other = EventsDigest.Of([on with { Because = "the flood of 08:00 is due" }])!.Value;
        Assert.Equal(EventsDigest.Of([on])!.Value.What, other.What);
        Assert.NotEqual(EventsDigest.Of([on])!.Value.Because, other.Because);
    }

    [Fact]
    public void TheirOrderAndNumberShow()
    {
        var off = on with { What = "off" };
        Assert.NotEqual(EventsDigest.Of([on, off]), EventsDigest.Of([off, on]));
        Assert.Equal((1, 2), (EventsDigest.Of([on])!.Value.Count, EventsDigest.Of([on, on])!.Value.Count));
    }
}
