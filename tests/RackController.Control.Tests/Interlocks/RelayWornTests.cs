using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row relay-worn, of a relay that is made for so few operations that days wear it.</summary>
public class RelayWornTests
{
    private const string Key = "north/pump/relay-worn";

    [Fact]
    public void ARelayIsToldOfWhenItHasSwitchedAsOftenAsItIsMadeFor()
    {
        var rig = Floods(4, ratedOperations: 5);
        Assert.Null(rig.Alarm(Key));
        Flood(rig);
        Assert.Equal(AlarmPriority.Low, rig.Alarm(Key)!.Priority);
        Assert.Equal("the relay of north/pump has switched 5 times and is made for 5", rig.Alarm(Key)!.Cause);
        Flood(rig);
        Assert.True(rig.IsOn("north/pump"));
    }

    [Fact]
    public void TheCountGoesOnOverARestart()
    {
        var rig = Floods(4, ratedOperations: 5);
        rig.Restart(Duration.FromMinutes(1));
        Flood(rig);
        Assert.NotNull(rig.Alarm(Key));
    }

    [Fact]
    public void ARestartForgetsNoWornRelay()
    {
        var rig = Floods(5, ratedOperations: 5);
        rig.Restart(Duration.FromMinutes(1));
        rig.Scan();
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void AChangedRelayCountsFromZero()
    {
        var rig = Floods(5, ratedOperations: 5);
        rig.Scan(new ResetLatch("Ada", Key));
        rig.Scan(new ConfirmReset("Ben", Key));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
        for (var flood = 0; flood < 4; flood++)
        {
            Flood(rig);
        }

        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void ARelayOfLongLifeWritesItsCountSeldom()
    {
        // 2,000 operations, remembered every second one.
        var changed = Enumerable.Range(1, 4).Select(count => Save(count).MemoryVersion).ToList();
        Assert.Equal([0, 1, 1, 2], changed);
    }

    private static Interlock Save(int operations)
    {
        var site = Of(2_000);
        var areas = new Areas(site);
        var start = new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
        var memory = new MemoryReader(null, start);
        var calendar = new RackDemand(site, new RackId(0), memory, start, []).Clock;
        var facts = new Facts(
            site, areas, [new RackDesk(site.Racks[0])], new ProofTestLog(site, areas, calendar, memory, start, []), start);
        facts.AskedBy(areas.Racks[0]);
        var worn = CauseAndEffectTable.Build(new InterlockSite(site, start, [])).Single(each => each.Key == Key);
        for (var scan = 0; scan < 2 * operations; scan++)
        {
            facts.Begin(start, ScanConditions.Good, new RelayCommands(site)
            {
                [site.Racks[0].Pump.Load] = scan % 2 == 0 ? SwitchState.On : SwitchState.Off,
            });
            worn.Look(facts, new Agenda());
        }

        return worn;
    }

    private static Rig Floods(int count, int ratedOperations)
    {
        var rig = new Rig(Of(ratedOperations));
        for (var flood = 0; flood < count; flood++)
        {
            Flood(rig);
        }

        return rig;
    }

    private static Site Of(int ratedOperations)
    {
        var site = Sites.OneRack();
        return site with { Loads = site.Loads.SetItem(0, site.Loads[0] with { RatedOperations = ratedOperations }) };
    }

    private static void Flood(Rig rig)
    {
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.Scan();
    }
}
