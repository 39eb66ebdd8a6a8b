using NodaTime;
using RackController.Control.Tests.Exploring;
using RackController.Model;
using static RackController.Control.AlarmState;

namespace RackController.Control.Tests.Alarms;

/// <summary>
/// The transitions of an alarm, found by walking through every state that it can come to by conditions, people, time and restarts, are
/// those of the state diagram of ISA-18.2-2016 and IEC 62682:2014 (both from memory) and no others. What the diagram draws as two
/// states of a latched alarm, seen and not seen, is here one state and the unacknowledged one: who has not seen it is owed the same,
/// whether its condition is still there or only its latch. An alarm that comes back into sight shows what its condition is then.
/// </summary>
public class AlarmWalkTests
{
    private static readonly HashSet<(AlarmState From, string Cause, AlarmState To)> standard =
    [
        .. Each(Normal, (Comes, Unacknowledged)),
        .. Each(Unacknowledged, (Seen, Acknowledged), (Seen, Latched), (Goes, ReturnedUnacknowledged), (Released, ReturnedUnacknowledged)),
        .. Each(Acknowledged, (Goes, Normal), (Goes, Latched)),
        .. Each(ReturnedUnacknowledged, (Comes, Unacknowledged), (Seen, Normal)),
        .. Each(Latched, (Released, Normal), (Comes, Unacknowledged)),
        .. Each(Shelved, (TimeOver, Normal), (TimeOver, Unacknowledged), (TimeOver, SuppressedByDesign)),
        .. Each(Shelved, (Unshelved, Normal), (Unshelved, Unacknowledged)),
        .. Each(SuppressedByDesign, (MeansSomethingAgain, Normal), (MeansSomethingAgain, Unacknowledged)),
        .. Each(OutOfService, (PutBack, Normal), (PutBack, Unacknowledged)),
        .. InSight.Select(from => (from, ShelvedByAPerson, Shelved)).Where(each => each.from != Normal),
        .. InSight.Append(Shelved).Select(from => (from, MeansNothing, SuppressedByDesign)).Where(each => each.from != Shelved),
        .. InSight.Concat([Shelved, SuppressedByDesign]).Select(from => (from, TakenOut, OutOfService)),
    ];

    private const string Comes = "condition comes";
    private const string Goes = "condition goes";
    private const string Released = "latch is released";
    private const string Seen = "acknowledged";
    private const string ShelvedByAPerson = "shelved";
    private const string Unshelved = "unshelved";
    private const string TimeOver = "shelving is over";
    private const string MeansNothing = "suppressed";
    private const string MeansSomethingAgain = "no longer suppressed";
    private const string TakenOut = "taken out of service";
    private const string PutBack = "put back";
    private const string Restarted = "restart";

    private static AlarmState[] InSight => [Normal, Unacknowledged, Acknowledged, ReturnedUnacknowledged, Latched];

    [Fact]
    public void TheTransitionsAreThoseOfTheStandardAndNoOthers()
    {
        var found = Walk().Where(each => each.From.Alarm.State != each.To.Alarm.State && each.Cause != Restarted)
            .Select(each => (each.From.Alarm.State, each.Cause, each.To.Alarm.State)).ToHashSet();
        Assert.Empty(found.Except(standard));
        Assert.Empty(standard.Except(found));
    }

    [Fact]
    public void ARestartChangesNoAlarm() => Assert.All(
        Walk().Where(each => each.Cause == Restarted), each => Assert.Equal(each.From.Alarm.State, each.To.Alarm.State));

    [Fact]
    public void EveryStateOfTheStandardIsReached() =>
        Assert.Equal(Enum.GetValues<AlarmState>(), Walk().Select(each => each.To.Alarm.State).Distinct().Order());

    private static IEnumerable<(AlarmState, string, AlarmState)> Each(AlarmState from, params (string Cause, AlarmState To)[] ways) =>
        ways.Select(way => (from, way.Cause, way.To));

    private static IEnumerable<(State From, string Cause, State To)> Walk()
    {
        var start = new Moment(MonotonicTime.FromMilliseconds(5_000), Instant.FromUtc(2026, 6, 1, 16, 0), WallTrusted: true);
        var open = new Queue<State>([new State(new AlarmPoint("north/low-float"), start, false, false, false)]);
        var seen = new HashSet<string>();
        while (open.TryDequeue(out var from))
        {
            if (!seen.Add(from.Key))
            {
                continue;
            }

            foreach (var (cause, to) in from.Turnings())
            {
                // What a person did is followed in the same scan by what the conditions make of it.
                var settled = State.Follow(to);
                yield return (from, cause, to);
                yield return (to, to.Suppressed ? MeansNothing : TimeOver, settled);
                open.Enqueue(settled);
            }
        }
    }

    /// <summary>An alarm in one of its states, and what its interlock says.</summary>
    private sealed record State(AlarmPoint Alarm, Moment Now, bool Present, bool Latched, bool Suppressed)
    {
        private static readonly Duration hour = Duration.FromHours(1);
        private static readonly Portrait portrait = new([Duration.Epsilon, Duration.FromMinutes(1), hour, AlarmPoint.LongestShelving]);

        public string Key => $"{Present}{Latched}{Suppressed}{Alarm.State}{portrait.Left(Alarm.Due, Now.Monotonic)}";

        // One thing at a time changes; only a latch catches together with its cause.
        public IEnumerable<(string Cause, State To)> Turnings()
        {
            yield return Present ? (Goes, Follow(this with { Present = false })) : (Comes, Follow(this with { Present = true }));
            if (!Present)
            {
                yield return (Comes, Follow(this with { Present = true, Latched = true }));
            }

            if (Latched && !Present)
            {
                yield return (Released, Follow(this with { Latched = false }));
            }

            yield return (Suppressed ? MeansSomethingAgain : MeansNothing, Follow(this with { Suppressed = !Suppressed }));
            yield return (TimeOver, Follow(After(Duration.FromMinutes(1))));
            yield return (TimeOver, Follow(After(hour)));
            yield return (Seen, Do(alarm => alarm.Acknowledge(Now)));
            yield return (ShelvedByAPerson, Do(alarm => alarm.Shelve(hour, Now)));
            yield return (ShelvedByAPerson, Do(alarm => alarm.Shelve(Duration.Zero, Now)));
            yield return (Unshelved, Do(alarm => alarm.Unshelve(Now)));
            yield return (TakenOut, Do(alarm => alarm.SetOutOfService(true, Now)));
            yield return (PutBack, Do(alarm => alarm.SetOutOfService(false, Now)));
            yield return (Restarted, Restart());
        }

        private State After(Duration time) =>
            this with { Now = Now with { Monotonic = Now.Monotonic + time, Wall = Now.Wall + time } };

        public static State Follow(State told)
        {
            var alarm = Twin.Of(told.Alarm);
            alarm.Follow(told.Present, told.Latched, told.Suppressed, told.Now);
            return told with { Alarm = alarm };
        }

        private State Do(Action<AlarmPoint> act)
        {
            var alarm = Twin.Of(Alarm);
            act(alarm);
            return this with { Alarm = alarm };
        }

        private State Restart()
        {
            var writer = new MemoryWriter(Now, expected: 0);
            Alarm.Save(writer);
            var anew = new AlarmPoint(Alarm.Key);
            anew.Restore(new MemoryReader(writer.ToMemory(), Now), Now);
            return this with { Alarm = anew };
        }
    }
}
