using System.Collections.Concurrent;
using System.Collections.Immutable;
using RackController.Control.Tests.Exploring;
using RackController.Model;

namespace RackController.Control.Tests.Interlocks;

/// <summary>What holds in every state to which an interlock can come, found by walking through all of them. A new row is walked as soon as
/// it stands in the table.</summary>
[Trait("Pace", "long")]
public class WalkTests
{
    private static readonly Site site = ThoroughSite.Make();
    private static readonly ConcurrentDictionary<string, Lazy<RowWalk>> walks = new();

    // Of every row the last instance on the site, which is that of a tier where it has one.
    private static readonly List<Interlock> interlocks =
        [.. Wanderer.All(site, Surroundings.AtRest(site).Now, []).GroupBy(each => each.Row.Id).Select(row => row.Last())];

    public static TheoryData<string> Keys => [.. interlocks.Select(each => each.Key)];

    [Fact]
    public void EveryRowOfTheTableIsWalked() =>
        Assert.Equal(CauseAndEffectTable.Rows.Select(row => row.Id), interlocks.Select(each => each.Row.Id));

    [Theory]
    [MemberData(nameof(Keys))]
    public void ItActsAndComesBack(string key)
    {
        var walk = Of(key);
        Assert.Contains(walk.States, state => state.Interlock.Objects);
        Assert.Contains(walk.States, state => !state.Interlock.Objects);
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void ItComesBackInExactlyTheWaysThatItsRowNames(string key)
    {
        var walk = Of(key);
        Assert.Equal(walk.States[0].Interlock.Row.Returns, WaysFound.In(walk));
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void ALatchIsReleasedByAResetOnceTheCauseIsGoneAndByNothingElse(string key)
    {
        var walk = Of(key);
        foreach (var (from, kind, to) in walk.Turnings)
        {
            var (before, after) = (walk.States[from].Interlock, walk.States[to].Interlock);
            if (before.IsLatched && !after.IsLatched)
            {
                Assert.True(kind == TurningKind.Reset && !before.Present, $"{kind} released it: {walk.States[from].Way}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void FromEveryStateItCanComeBack(string key)
    {
        var walk = Of(key);
        var canReturn = WaysFound.Reaching(walk, state => !state.Interlock.Objects, (_, _) => true);
        var stuck = walk.States.Where((_, place) => !canReturn[place]).Select(state => state.Way);
        Assert.Empty(stuck.Take(3));
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void NothingChangesBeforeTheTimeThatItNames(string key)
    {
        var walk = Of(key);
        foreach (var before in walk.States)
        {
            foreach (var after in walk.Wanderer.Later(before).Where(each => each.Around.Now.Monotonic < before.Next))
            {
                Assert.True(Answer(before) == Answer(after), $"it names no time for a change: {after.Way}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void AskedAgainWithNothingChangedItAnswersTheSame(string key)
    {
        var walk = Of(key);
        foreach (var state in walk.States)
        {
            var again = walk.Wanderer.Look(Twin.Of(state.Interlock), state.Around, state.Came);
            var third = walk.Wanderer.Look(Twin.Of(again.Interlock), state.Around, state.Came);
            Assert.True(Answer(state) == Answer(again), $"it changes its mind: {state.Way}");
            Assert.True((Answer(again), again.Due) == (Answer(third), third.Due), $"it changes its time: {state.Way}");
        }
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void OnceEveryCauseIsGoneItLetsItsLoadsRunWhateverTheOthersDo(string key)
    {
        var walk = Of(key);
        Assert.Empty(walk.States.Select(state => Recovery.Fault(walk, state, site)).Where(fault => fault is not null).Take(3));
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void WhateverItRemembersOtherwiseItSaysByItself(string key)
    {
        var walk = Of(key);
        foreach (var before in walk.States.Take(2_000))
        {
            var (version, kept) = (before.Interlock.MemoryVersion, Kept(before));
            foreach (var (_, after) in walk.Wanderer.Turnings(before, walk.Matters).Where(each => each.Kind != TurningKind.Restart))
            {
                Assert.True(
                    after.Interlock.MemoryVersion > version || KeptItems.AreSame(kept, Kept(after)),
                    $"what it remembers went unsaid: {after.Way}");
            }
        }
    }

    private static ImmutableArray<KeyValuePair<string, double>> Kept(Standpoint state)
    {
        var writer = new MemoryWriter(state.Around.Now, expected: 0);
        state.Interlock.Save(writer);
        return KeptItems.Of(writer.ToMemory(), state.Around.Now);
    }

    private static RowWalk Of(string key) => walks.GetOrAdd(key, each => new Lazy<RowWalk>(() => new RowWalk(site, each))).Value;

    private static (bool, bool, bool, bool) Answer(Standpoint state) => (
        state.Interlock.Objects, state.Interlock.IsAlarming, state.Interlock.IsLatched, state.Interlock.IsSuppressed);
}
