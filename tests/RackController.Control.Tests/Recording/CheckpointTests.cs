using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Recording;

/// <summary>Once a day what the controller remembers is put on record, where that is nearly all that it goes by.</summary>
public class CheckpointTests
{
    private static readonly Duration day = Duration.FromDays(1);

    [Fact]
    public void OnceADayFarFromAnyFloodWhatTheControllerRemembersIsPutDown()
    {
        var rig = new Rig(Flooded(new FloodsAt([new LocalTime(9, 0), new LocalTime(16, 0)])));
        var pages = PagesOf(rig, day * 3);

        var checkpoints = pages.Where(page => page.Kind == PageKind.Checkpoint).ToList();
        Assert.InRange(checkpoints.Count, 2, 3);
        Assert.All(checkpoints, page => Assert.NotNull(page.State!.Memory));
        Assert.All(checkpoints, page => Assert.True(
            Floods(rig).All(flood => flood > page.At.Wall + Duration.FromMinutes(59) || flood < page.At.Wall - Duration.FromHours(1))));
    }

    [Fact]
    public void WhereFloodsFollowCloselyAMomentBetweenTwoOfThemHasToDoAfterSixHours()
    {
        var rig = new Rig(Flooded(new FloodsEvery(Duration.FromMinutes(45), new LocalTime(0, 0), day)));
        var pages = PagesOf(rig, Duration.FromHours(32));

        var checkpoint = Assert.Single(pages, page => page.Kind == PageKind.Checkpoint);
        Assert.InRange(checkpoint.At.Monotonic - pages[0].At.Monotonic, Duration.FromHours(30), Duration.FromHours(31));
        Assert.Equal(FloodPhase.Idle, new RackControl(rig.Site, checkpoint.At, checkpoint.State!.Memory).FloodPhase(new RackId(0)));
    }

    [Fact]
    public void APageThatHasGrownLargeIsHandedOverAtOnce()
    {
        // More than a page holds at first, so that it has to make room.
        var rig = new Rig(Sites.OneRack());
        var recorder = new ScanRecorder(rig.Control, rig.Now, memory: null);
        recorder.TakePage();
        var readings = new Readings(rig.Site);
        var commands = rig.Scan(new SkipNextFlood(new string('A', 20_000), new RackId(0)));
        rig.Fill(readings, rig.Now.Monotonic);
        recorder.Note(rig.Now, readings, ScanConditions.Good, [], commands, []);
        recorder.TakePage();

        commands = rig.Scan();
        OperatorRequest[] requests = [new SkipNextFlood(new string('A', 20_000), new RackId(0))];
        recorder.Note(rig.Now, readings, ScanConditions.Good, requests, commands, []);

        Assert.True(recorder.IsPageDue);
        Assert.Equal(requests, Assert.Single(RecordedPages.Read(recorder.TakePage().Body).Scans).Requests);
    }

    private static Site Flooded(FloodTimes times) => Sites.OneRack().WithSchedule(
        schedule => schedule with { Floods = schedule.Floods with { Times = times } });

    private static IEnumerable<Instant> Floods(Rig rig) => rig.Events
        .Where(each => each is { Kind: EventKind.Load, Subject: "north/pump", What: "on" }).Select(each => each.At.Wall);

    private static List<RecordedPage> PagesOf(Rig rig, Duration length)
    {
        var record = new RecordedRig(rig);
        for (var end = rig.Now.Monotonic + length; rig.Now.Monotonic < end;)
        {
            rig.LeapFor(Duration.FromMinutes(1));
        }

        return record.Pages;
    }
}
