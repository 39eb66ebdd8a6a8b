using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>What is said of floods that were missed or are late. Floods are due at 07:00, 13:00 and 19:00 in New York.</summary>
public class MissedWordsTests
{
    private static readonly Instant Seven = Instant.FromUtc(2026, 6, 1, 11, 0);
    private static readonly Site Skipping = Sites.OneRack().WithSchedule(schedule => schedule with
    {
        Floods = schedule.Floods with { Missed = MissedFloods.Skip },
    });

    [Theory]
    [InlineData(60, "a flood at 07:00 was missed and one flood makes up for it")]
    [InlineData(361, "the schedule floods at 13:00, and a flood was missed")]
    [InlineData(420, "2 floods, the last at 13:00, were missed and one flood makes up for it")]
    [InlineData(721, "the schedule floods at 19:00, and 2 floods were missed")]
    [InlineData(5, "the schedule floods at 07:00")]
    public void AfterAnOutageItSaysHowManyWereMissed(int minutes, string words)
    {
        var rig = Restarted(Sites.OneRack(), Seven + Duration.FromMinutes(minutes));
        rig.Scan();
        Assert.Equal((FloodEvent.Due, words), (rig.Events[0].What, rig.Events[0].Because));
    }

    [Theory]
    [InlineData(300, FloodEvent.Due, "the schedule floods at 07:00")]
    [InlineData(301, FloodEvent.LeftOut, "a flood at 07:00 was missed and the schedule lets missed floods go")]
    public void AFloodIsMissedOnceItIsMoreThanFiveMinutesLate(int seconds, string what, string words)
    {
        var rig = Restarted(Skipping, Seven + Duration.FromSeconds(seconds));
        rig.Scan();
        Assert.Equal((what, words), (rig.Events[0].What, rig.Events[0].Because));
    }

    [Fact]
    public void AFloodThatStandsForTheNextSaysSo()
    {
        var rig = Restarted(Sites.OneRack(), Seven + Duration.FromHours(5) + Duration.FromMinutes(40));
        rig.RunUntil(Seven + Duration.FromHours(7));
        Assert.Equal(
            "the flood that began late stands for the one at 13:00", rig.Events.Single(each => each.What == FloodEvent.LeftOut).Because);
    }

    [Theory]
    [InlineData(2, false, "the pump was told off while filling")]
    [InlineData(7, false, "the pump was told off while soaking")]
    [InlineData(7, true, "every tier is out of use while soaking")]
    public void AFloodThatIsCutShortSaysWhy(int minutes, bool isOutOfUse, string words)
    {
        var cut = Seven + Duration.FromMinutes(minutes);
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(1)) { PumpMayRun = now => isOutOfUse || now.Wall < cut };
        rig.RunUntil(cut);
        rig.Demand.TrySetTierInUse(1, !isOutOfUse, out _);
        rig.Demand.TrySetTierInUse(2, !isOutOfUse, out _);
        rig.Run(Duration.FromMinutes(1));
        Assert.Equal(words, rig.Events.Single(each => each.What == FloodEvent.CutShort).Because);
    }

    [Fact]
    public void ATierThatIsInUseAgainMayBeFlooded()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromHours(1));
        rig.Demand.TrySetTierInUse(1, false, out _);
        rig.Demand.TrySetTierInUse(2, false, out _);
        Assert.False(rig.Demand.TryFloodNow(rig.Now, rig, out _));
        rig.Demand.TrySetTierInUse(2, true, out _);
        Assert.True(rig.Demand.TryFloodNow(rig.Now, rig, out _));
    }

    [Fact]
    public void WhatAPersonSaidOfATierIsRemembered()
    {
        var site = Sites.OneRack().WithRack(rack => rack with { Tiers = rack.Tiers.SetItem(1, rack.Tiers[1] with { InUse = false }) });
        var rig = new DemandRig(site, Seven - Duration.FromHours(1));
        Assert.False(rig.Demand.IsTierInUse(2));
        rig.Demand.TrySetTierInUse(1, false, out _);
        rig.Demand.TrySetTierInUse(2, true, out _);
        var again = new DemandRig(site, Seven, memory: rig.Save());
        Assert.Equal((false, true), (again.Demand.IsTierInUse(1), again.Demand.IsTierInUse(2)));
    }

    [Fact]
    public void ThatTheNextFloodIsLeftOutIsRemembered()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromHours(1));
        rig.Scan();
        rig.Demand.TrySkipNext(rig.Now, rig, out _);
        var again = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(30), memory: rig.Save());
        again.RunUntil(Seven + Duration.FromHours(7));
        Assert.Equal([FloodEvent.LeftOut, FloodEvent.Due], again.Events.Take(2).Select(each => each.What));
    }

    [Fact]
    public void WithoutAClockTheFirstLightOfTheDayIsNow()
    {
        var site = Sites.OneRack().WithSchedule(plan => plan with
        {
            Lights = [new Photoperiod(new LocalTime(8, 0), Duration.FromHours(12)), plan.Lights[1]],
        });
        var rig = new DemandRig(site, Seven, trusted: false);
        Assert.Equal(Seven - Duration.FromHours(1), rig.Demand.Clock.Now);
    }

    [Theory]
    [InlineData(5, "its cycle has it on until 07:10")]
    [InlineData(15, "its cycle has it off until 07:30")]
    [InlineData(35, "its cycle has it on until 07:40")]
    public void ACycleSaysWhenItChanges(int minutes, string words)
    {
        var site = Sites.OneRack().WithSchedule(plan => plan with
        {
            Runs = [plan.Runs[0], new RunInCycles(plan.Runs[1].Load, Duration.FromMinutes(10), Duration.FromMinutes(20))],
        });
        var rig = new DemandRig(site, Seven);
        rig.RunUntil(Seven + Duration.FromMinutes(minutes));
        Assert.Equal(words, rig.Demand.Words(rig["north/fan"], rig.Id("north/fan"), rig.Now.Monotonic));
    }

    [Fact]
    public void AtNightTheLightsComeOnNext()
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromHours(2));
        rig.Scan();
        var due = new List<DueNext>();
        rig.Demand.AddDueNext(due, rig.Demands, rig.Now);
        Assert.Contains(new DueNext("north/tier 1 light", "on", Seven - Duration.FromHours(1)), due);
    }

    /// <summary>Whatever of the memory changes, but for ages and the clock itself, the count says so in that very scan.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhateverIsRememberedIsSaidToHaveChanged(bool isTrusted)
    {
        var rig = new DemandRig(Sites.OneRack(), Seven - Duration.FromMinutes(2), isTrusted);
        var cut = Seven + Duration.FromHours(6) + Duration.FromMinutes(2);
        rig.PumpMayRun = now => now.Wall < cut || now.Wall > cut + Duration.FromMinutes(1);
        var (before, version, changes) = (Kept(rig), rig.Demand.MemoryVersion, 0);
        var actions = new Dictionary<int, Action>
        {
            [50] = () => rig.Demand.TrySkipNext(rig.Now, rig, out _),
            [300] = () => rig.Demand.TryFloodNow(rig.Now, rig, out _),
            [320] = () => rig.Demand.TryFloodNow(rig.Now, rig, out _),
            [340] = () => rig.Demand.TrySkipNext(rig.Now, rig, out _),
            [900] = () => rig.Demand.TrySetTierInUse(1, false, out _),
        };
        for (var minute = 0; minute < 1_440; minute++)
        {
            actions.GetValueOrDefault(minute)?.Invoke();
            rig.Run(Duration.FromMinutes(1));
            var kept = Kept(rig);
            if (kept != before)
            {
                Assert.True(rig.Demand.MemoryVersion > version, $"minute {minute}: {before} became {kept}");
                changes++;
            }

            (before, version) = (kept, rig.Demand.MemoryVersion);
        }

        Assert.True(changes > 5);
    }

    private static string Kept(DemandRig rig) => string.Join(", ", rig.Save().Items.Where(item =>
        !item.Key.EndsWith("/last-flood", StringComparison.Ordinal) && !item.Key.EndsWith("/clock", StringComparison.Ordinal)));

    private static DemandRig Restarted(Site site, Instant starts)
    {
        var rig = new DemandRig(site, Seven - Duration.FromMinutes(70));
        rig.RunUntil(Seven - Duration.FromHours(1));
        return new DemandRig(site, starts, memory: rig.Save());
    }
}
