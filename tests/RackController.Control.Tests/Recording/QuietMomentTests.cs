using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Recording;

/// <summary>When a moment is quiet enough for what the controller remembers to be put on record: a day after the last time at the
/// earliest, an hour after a pump ran, an hour before the next flood, and in no flood. The zone is four hours behind.</summary>
public class QuietMomentTests
{
    private static readonly Instant start = Instant.FromUtc(2026, 6, 1, 16, 0);

    [Fact]
    public void ADayAfterTheStartAtTheEarliest()
    {
        var (rig, record) = Begin(Sites.OneRack().WithSchedule(plan => plan with { Floods = plan.Floods with { Times = new NoFloods() } }));
        rig.LeapFor(Duration.FromDays(1) - Duration.FromMilliseconds(100));
        Assert.False(IsQuiet(rig, record));
        record.Scan();
        Assert.True(IsQuiet(rig, record));
        rig.LeapFor(Duration.FromHours(23));
        Assert.False(IsQuiet(rig, record));
    }

    // Noon is when the day is over.
    [Theory]
    [InlineData(12, 59, false)]
    [InlineData(13, 0, true)]
    [InlineData(13, 1, true)]
    public void AnHourBeforeTheNextFloodAtTheLatest(int hour, int minute, bool isQuiet)
    {
        var (rig, record) = Begin(FloodedAt(new LocalTime(hour, minute), new LocalTime(20, 0)));
        rig.LeapFor(Duration.FromDays(1));
        Assert.Equal(isQuiet, IsQuiet(rig, record));
    }

    [Fact]
    public void AnHourAfterThePumpRanAtTheEarliest()
    {
        var (rig, record) = Begin(FloodedAt(new LocalTime(11, 50)));
        rig.LeapFor(Duration.FromHours(23));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapFor(Duration.FromHours(1) - Duration.FromMilliseconds(100));
        Assert.False(IsQuiet(rig, record));
        record.Scan();
        Assert.True(IsQuiet(rig, record));
    }

    [Fact]
    public void LightsThatAreSwitchedDisturbNothing()
    {
        var site = FloodedAt(new LocalTime(20, 0)).WithSchedule(plan => plan with
        {
            Lights = [new Photoperiod(new LocalTime(11, 30), Duration.FromHours(1)), null],
        });
        var (rig, record) = Begin(site);
        rig.LeapFor(Duration.FromDays(1));
        Assert.True(rig.IsOn("north/tier 1 light"));
        Assert.True(IsQuiet(rig, record));
    }

    [Fact]
    public void NotWhileAnyRackDrainsHoweverLongItsPumpHasStood()
    {
        var site = Sites.ManyRacks(racks: 2, racksToACircuit: 1).WithSchedule(
            plan => plan with { Floods = plan.Floods with { Times = new NoFloods() } });
        var second = site.Racks[1];
        var drains = second.Schedule.Floods with { Times = new FloodsAt([new LocalTime(10, 30)]), Drain = Duration.FromHours(3) };
        var (rig, record) = Begin(site with
        {
            Racks = site.Racks.SetItem(1, second with { Schedule = second.Schedule with { Floods = drains } }),
        });
        rig.LeapFor(Duration.FromDays(1));
        Assert.Equal(FloodPhase.Draining, rig.Control.FloodPhase(second.Id));
        Assert.False(IsQuiet(rig, record));
        rig.LeapFor(Duration.FromHours(6));
        Assert.Contains(record.Pages, page => page.Kind == PageKind.Checkpoint);
    }

    [Fact]
    public void AfterSixHoursOfPatienceTheMomentMayLieCloseToAFlood()
    {
        var (rig, record) = Begin(Sites.OneRack().WithSchedule(plan => plan with
        {
            Floods = plan.Floods with { Times = new FloodsEvery(Duration.FromMinutes(50), new LocalTime(0, 0), Duration.FromDays(1)) },
        }));
        rig.LeapFor(Duration.FromHours(30) - Duration.FromMilliseconds(100));
        Assert.Equal(FloodPhase.Idle, rig.Control.FloodPhase(new RackId(0)));
        Assert.False(IsQuiet(rig, record));
        record.Scan();
        Assert.True(IsQuiet(rig, record));
    }

    private static Site FloodedAt(params LocalTime[] times) => Sites.OneRack().WithSchedule(
        plan => plan with { Floods = plan.Floods with { Times = new FloodsAt([.. times]) } });

    private static bool IsQuiet(Rig rig, RecordedRig record)
    {
        // The first page ends here, whatever it was; what the next begins with says how this moment was judged.
        record.EndPage();
        record.EndPage();
        return record.Pages.Any(page => page.Kind == PageKind.Checkpoint && page.At == rig.Now);
    }

    private static (Rig Rig, RecordedRig Record) Begin(Site site)
    {
        var rig = new Rig(site, start);
        return (rig, new RecordedRig(rig));
    }
}
