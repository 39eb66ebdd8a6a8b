using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Validation;

/// <summary>What is told of a sensor that falls silent and speaks again, and when.</summary>
public class ValidationTests
{
    private const string Rope = "north/leak rope";

    [Fact]
    public void ASensorThatFallsSilentIsToldWhenItsLastReadingGrowsStaleAndAgainWhenItHasSpokenForAWhile()
    {
        var rig = new Rig(Sites.OneRack());
        rig.ScanFor(Duration.FromSeconds(10));
        var told = rig.Events.Count;
        rig.Silence(Rope);
        var silent = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Events.Skip(told).Any(each => each.Subject == Rope));

        // A reading holds for 2 s; the scan after that finds it stale.
        Assert.Equal(Duration.FromSeconds(2.1), rig.Now.Monotonic - silent);
        rig.LeapFor(Duration.FromSeconds(5));
        rig.Speak(Rope);
        rig.LeapFor(Duration.FromSeconds(10));
        Assert.Equal(
            [("unknown", "its reading is stale"), ("known", "its readings have been good for a while")],
            rig.Events.Skip(told).Where(each => each.Subject == Rope).Select(each => (each.What, each.Because)));
    }
}
