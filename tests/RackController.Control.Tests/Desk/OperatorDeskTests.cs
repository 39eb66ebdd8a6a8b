using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Desk;

public class OperatorDeskTests
{
    private static readonly RackId north = new(0);

    [Fact]
    public void AFloodAskedForWhileTheRackIsStoppedDoesNotWaitForWhoeverResumesIt()
    {
        var rig = new Rig(Sites.OneRack().WithSchedule(s => s with { Floods = s.Floods with { Times = new NoFloods() } }));
        rig.LeapFor(Duration.FromMinutes(20));
        rig.Scan(new Stop("Ada", null));
        rig.Scan(new FloodNow("Ben", north));
        Assert.Equal("flood now: north is stopped; resume it first", Answer(rig));

        rig.Scan(new Resume("Ada", null));
        rig.LeapFor(Duration.FromHours(1));

        Assert.DoesNotContain(rig.Events, e => e is { Subject: "north/pump", What: "on" });
    }

    [Fact]
    public void ALatchGoesByTwoActionsInTimeAndNotWhileItsCauseIsThere()
    {
        var rig = new Rig(Sites.OneRack());
        rig.Set("north/leak rope", 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Scan(new ConfirmReset("Ada", "north/high-water"));
        Assert.Equal("confirm reset: ask for the reset first, then confirm it", Answer(rig));

        rig.Scan(new ResetLatch("Ada", "north/high-water"));
        rig.Scan(new ConfirmReset("Ben", "north/high-water"));
        Assert.StartsWith("confirm reset: the latch stays", Answer(rig), StringComparison.Ordinal);

        rig.Set("north/leak rope", 0);
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Scan(new ResetLatch("Ada", "north/high-water"));
        rig.ScanFor(Duration.FromSeconds(61));
        rig.Scan(new ConfirmReset("Ben", "north/high-water"));
        Assert.Equal("confirm reset: ask for the reset first, then confirm it", Answer(rig));

        rig.Scan(new ResetLatch("Ada", "north/high-water"));
        rig.Scan(new ConfirmReset("Ben", "north/high-water"));
        Assert.Equal("confirm reset: the latch is released", Answer(rig));
    }

    private static string Answer(Rig rig) => rig.Events.Last(e => e.Kind == EventKind.Request).What;
}
