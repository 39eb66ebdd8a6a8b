using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Scanning;

/// <summary>
/// Leaping to the time at which something could change gives the same events as scanning every 100 ms: what makes a bench
/// both fast and right.
/// </summary>
public class LeapTests
{
    private static readonly RackId north = new(0);

    private static readonly Action<Rig>[] acts =
    [
        rig => rig.Set("north/reservoir low float", 0),
        rig => rig.Set("north/reservoir low float", 1),
        rig => rig.Set("north/tier 1 high float", 1),
        rig => rig.Set("north/tier 1 high float", 0),
        rig => rig.Set("sockets/supply sense", 0),
        rig => rig.Set("sockets/supply sense", 1),
        rig => rig.Silence("north/leak rope"),
        rig => rig.StepWall(Duration.FromHours(-1)),
        rig => rig.StepWall(Duration.FromHours(2)),
        rig => rig.TrustWall(false),
        rig => rig.TrustWall(true),
        rig => rig.Ask(new FloodNow("Ada", north)),
        rig => rig.Ask(new HoldForService("Ada", north, Duration.FromMinutes(7))),
        rig => rig.Ask(new Stop("Ada", null)),
        rig => rig.Ask(new Resume("Ada", null)),
        rig => rig.Ask(new SetTierInUse("Ada", north, 2, false)),
        rig => rig.Ask(new Shelve("Ada", "north/low-float", Duration.FromMinutes(11))),
        rig => rig.Ask(new Acknowledge("Ada", "north/low-float")),
        rig => rig.Ask(new ResetLatch("Ada", "north/high-water")),
        rig => rig.Ask(new ConfirmReset("Ada", "north/high-water")),
    ];

    private static readonly Gen<(int AtMs, Action<Rig> Act)> gesture =
        from atMs in Gen.Int[0, 3 * 60 * 60 * 10].Select(tenths => tenths * 100)
        from act in Gen.Int[0, acts.Length - 1].Select(i => acts[i])
        select (atMs, act);

    [Fact]
    [Trait("Pace", "long")]
    public void LeapingAndScanningTellTheSame() =>
        Gen.Select(gesture.List[0, 12], Gen.Int[0, 48], Gen.Int[1, 3]).Sample(
            (gestures, startHalfHours, everyQuarters) =>
            {
                var start = Instant.FromUtc(2026, 10, 31, 18, 0) + Duration.FromMinutes(30 * startHalfHours);
                var site = SiteThatFloodsEvery(Duration.FromMinutes(15 * everyQuarters));
                var leaping = new Rig(site, start);
                var scanning = new Rig(site, start);
                var at = Duration.Zero;
                foreach (var (atMs, act) in gestures.OrderBy(each => each.AtMs))
                {
                    var wait = Duration.FromMilliseconds(atMs) - at;
                    leaping.LeapFor(wait);
                    scanning.ScanFor(wait);
                    at += wait;
                    act(leaping);
                    act(scanning);
                }

                leaping.LeapFor(Duration.FromMinutes(30));
                scanning.ScanFor(Duration.FromMinutes(30));
                AssertSame(scanning.Events, leaping.Events);
            },
            iter: 40);

    [Fact]
    [Trait("Pace", "long")]
    public void AScanThatCouldNotMatterByTheWordOfTheControllerDoesNot() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Int[1, 60]).Sample(
            (seed, turns) =>
            {
                var story = RandomStory.Of(seed);
                var (leaping, scanning, chooser) = (new Told(story), new Told(story), new ScanChooser(story));
                foreach (var _ in story.Scans(turns))
                {
                    leaping.FollowRestart();
                    scanning.FollowRestart();
                    scanning.Control.LookEverywhere();
                    scanning.Scan();

                    // Before something happens the last scan is made, as a bench does: what a restart remembers is as of then.
                    if (chooser.CouldMatter(leaping.Control) || story.IsLastOfTurn)
                    {
                        leaping.Scan();
                    }

                    AssertSame(scanning.Events, leaping.Events);
                    Assert.Equal(scanning.Commands, leaping.Commands);
                    if (story.IsLastOfTurn)
                    {
                        Assert.Equal(scanning.Everything(), leaping.Everything());
                    }

                    leaping.Forget();
                    scanning.Forget();
                }
            },
            iter: 10);

    private static void AssertSame(IReadOnlyList<ControlEvent> scanned, IReadOnlyList<ControlEvent> leapt)
    {
        for (var i = 0; i < Math.Min(scanned.Count, leapt.Count); i++)
        {
            Assert.True(scanned[i] == leapt[i], $"event {i}: scanned {scanned[i]}, leapt {leapt[i]}");
        }

        var longer = scanned.Count > leapt.Count ? scanned : leapt;
        Assert.True(scanned.Count == leapt.Count, $"{scanned.Count} scanned, {leapt.Count} leapt; one has {string.Join(", ", longer)}");
    }

    private static Site SiteThatFloodsEvery(Duration interval) => Sites.OneRack()
        .WithLimits(limits => limits with
        {
            PumpMaximumRun = Duration.FromMinutes(4),
            PumpRest = Duration.FromMinutes(3),
            PumpDailyBudget = Duration.FromMinutes(30),
        })
        .WithSchedule(schedule => schedule with
        {
            Floods = new FloodPlan(
                new FloodsEvery(interval, LocalTime.Midnight, Duration.FromHours(24)),
                new FillForTime(Duration.FromMinutes(2)),
                Duration.FromMinutes(1),
                Duration.FromMinutes(4),
                MissedFloods.RunOne),
        });
}
