using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

public class FloodCycleTests
{
    private static readonly Instant Morning = Instant.FromUtc(2026, 6, 1, 10, 30); // 06:30 in New York

    [Fact]
    public void AFloodFillsSoaksAndDrainsForItsTimes()
    {
        var rig = new DemandRig(Sites.OneRack(), Morning);
        rig.Run(Duration.FromHours(2));
        Assert.Equal(
            ["due", "filling", "soaking", "draining", "drained"],
            rig.Events.Where(each => each.Kind == EventKind.Flood).Select(each => each.What));
        var filling = rig.When(FloodEvent.Filling).Single();
        Assert.Equal(Instant.FromUtc(2026, 6, 1, 11, 0), rig.When(FloodEvent.Due).Single());
        Assert.Equal(Duration.FromMinutes(5), rig.When(FloodEvent.Soaking).Single() - filling);
        Assert.Equal(Duration.FromMinutes(10), rig.When(FloodEvent.Draining).Single() - filling);
        Assert.Equal(Duration.FromMinutes(25), rig.When(FloodEvent.Drained).Single() - filling);
    }
}
