using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Scanning;

/// <summary>
/// Leaving alone whoever was asked nothing, reads what it read and has nothing due comes to the same as looking at everybody in
/// every scan: the same commands, events, alarms, words, due times and memory, scan by scan, whatever happens.
/// </summary>
public class AttentionTests
{
    [Fact]
    [Trait("Pace", "long")]
    public void LookingAtWhomItConcernsComesToTheSameAsLookingAtEverybody() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Int[1, 60]).Sample(Compare, iter: 10);

    [Fact]
    [Trait("Pace", "long")]
    public void TheStoriesMakeEveryRowOfTheTableActAndReturn()
    {
        var missing = CauseAndEffectTable.Rows.Select(row => row.Id).ToHashSet();
        for (var seed = 1; missing.Count > 0 && seed <= 80; seed++)
        {
            missing.ExceptWith(RowsThatActAndReturn(seed));
        }

        Assert.Empty(missing);
    }

    [Fact]
    public void WhatNothingCalledIsLookedAtAfterAFewScansAllTheSame()
    {
        var attention = new Attention(new Areas(Sites.ManyRacks(racks: 24, racksToACircuit: 2)));
        var called = new List<RackId>();
        for (var scan = 0; scan <= Attention.ScansToCallAll; scan++)
        {
            var now = new Moment(MonotonicTime.FromMilliseconds(1 + 100 * scan), default, WallTrusted: true);
            attention.Begin(now);
            attention.Gather(now);
            Assert.Equal(scan == 0, attention.IsEverybodyCalled);
            called.AddRange(scan == 0 ? [] : attention.CalledRacks);
        }

        Assert.Equal(Enumerable.Range(0, 24), called.Select(rack => rack.Index).Order());
    }

    [Fact]
    public void AMovingLevelThatNobodyAsksForDoesNotHideTheOneThatEndsAFill()
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(6), FullDepthMm: 40) },
        });
        var rack = site.Sensors[0] with { TierNumber = 1, PlausibleMax = 80 };
        var rig = new Rig(site with
        {
            Sensors =
            [
                .. site.Sensors,
                rack with { Id = new SensorId(site.Sensors.Length), Name = "north/full", Kind = SensorKind.TrayFullFloat, TierNumber = 2 },
                rack with { Id = new SensorId(site.Sensors.Length + 1), Name = "north/level", Kind = SensorKind.TrayLevel },
            ],
        });
        rig.Set("north/level", 2);
        rig.LeapUntil(() => rig.Control.FloodPhase(new RackId(0)) == FloodPhase.Filling);
        rig.Set("north/full", 1);
        rig.Set("north/level", 39);
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.Equal(FloodPhase.Filling, rig.Control.FloodPhase(new RackId(0)));

        rig.Set("north/level", 41);
        rig.Scan();
        Assert.Equal(FloodPhase.Soaking, rig.Control.FloodPhase(new RackId(0)));
    }

    private static HashSet<string> RowsThatActAndReturn(int seed)
    {
        var story = RandomStory.Of(seed);
        var told = new Told(story);
        var (rows, acting) = (new HashSet<string>(), new HashSet<string>());
        foreach (var _ in story.Scans(turns: 120))
        {
            told.FollowRestart();
            told.Scan();
            if (story.IsLastOfTurn)
            {
                var now = told.Acting();
                rows.UnionWith(acting.Except(now).Select(key => key[(key.LastIndexOf('/') + 1)..]));
                acting = now;
            }
        }

        return rows;
    }

    private static void Compare(int seed, int turns)
    {
        var story = RandomStory.Of(seed);
        var (some, all) = (new Told(story), new Told(story));
        foreach (var where in story.Scans(turns))
        {
            some.FollowRestart();
            all.FollowRestart();
            all.Control.LookEverywhere();
            some.Scan();
            all.Scan();
            AssertSame(some, all, where, isThorough: story.IsLastOfTurn);
        }
    }

    private static void AssertSame(Told some, Told all, string where, bool isThorough)
    {
        Assert.True(all.Commands.SequenceEqual(some.Commands), where);
        Assert.True(all.Control.NextChange == some.Control.NextChange, where);
        Assert.True(all.Control.MemoryVersion == some.Control.MemoryVersion, where);
        AssertSame(all.Events.Select(each => $"{each}"), some.Events.Select(each => $"{each}"), where);
        if (isThorough || some.Events.Count > 0)
        {
            AssertSame(all.Everything(), some.Everything(), where);
        }

        all.Forget();
        some.Forget();
    }

    private static void AssertSame(IEnumerable<string> all, IEnumerable<string> some, string where)
    {
        foreach (var (one, other) in all.Append("end").Zip(some.Append("end")))
        {
            Assert.True(one == other, $"{where}: looking at everybody {one}, at some {other}");
        }
    }
}
