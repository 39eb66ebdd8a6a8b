using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Floods by a wall clock that is trusted. A mark remembers up to which time every due flood was dealt with, so that a
/// clock set back a little never repeats one; and a flood that begins late stands for the due time it lies nearest to, so
/// that the next one does not follow on its heels. Two floods of the schedule are thus never closer than about half the way
/// between their due times.
/// </summary>
internal sealed class WallFloods
{
    /// <summary>A flood later than this was missed; up to this it is merely late. A boot takes a minute or two and a rest of
    /// the pump some more; nothing that a crop notices.</summary>
    public static readonly Duration Grace = Duration.FromMinutes(5);

    /// <summary>A wall clock set back by more than this was wrong before, and what was served by it says nothing of today's
    /// due times: the mark is set anew. Up to this, the same due time comes again and is not served again. Three hours cover
    /// every change of summer time, also twice, and a zone set wrong by its neighbour.</summary>
    public static readonly Duration KeepsMarkWithin = Duration.FromHours(3);

    /// <summary>Missed floods are counted no further back than this, only to say how many there were.</summary>
    private static readonly Duration CountsBack = Duration.FromDays(7);

    private readonly string key;
    private readonly FloodCalendar calendar;
    private readonly DateTimeZone zone;
    private readonly MissedFloods missed;
    private Instant? mark;
    private Instant? markBeforeOwed;
    private Instant stoodFor;

    public WallFloods(string key, FloodPlan plan, FloodCalendar calendar, DateTimeZone zone, MemoryReader memory, Moment start)
    {
        this.key = key;
        this.calendar = calendar;
        this.zone = zone;
        missed = plan.Missed;
        stoodFor = memory.WallTime($"{key}-stood-for") ?? Instant.MinValue;
        mark = memory.WallTime($"{key}-mark");
        if (mark is null && start.WallTrusted)
        {
            // One that is due at the very start is not missed.
            mark = start.Wall - Duration.Epsilon;
        }

        LookAhead();
    }

    /// <summary>The next due time that is not dealt with.</summary>
    public Instant NextDue { get; private set; }

    /// <summary>Whether one that came due has not begun.</summary>
    public bool IsOwed => markBeforeOwed is not null;

    /// <summary>The next due time at which a flood will really run, unless a person asked to leave it out.</summary>
    public Instant NextRun { get; private set; }

    /// <summary>The one after that.</summary>
    public Instant RunAfterNext { get; private set; }

    /// <summary>The clock has become trusted after a time without. Floods that were due meanwhile were either made up for by
    /// floods at the mean spacing, or count as missed.</summary>
    /// <param name="now">The time by the wall clock.</param>
    /// <param name="lastSpaced">When the last flood at the mean spacing began, if there was one.</param>
    public void TrustArrives(Instant now, Instant? lastSpaced)
    {
        if (lastSpaced is { } began)
        {
            MarkAt(now);
            StandFor(began);
        }
        else if (mark is null)
        {
            MarkAt(now);
        }
    }

    /// <summary>Looks at how far the clock was set back.</summary>
    /// <returns>Whether the mark had to be set anew.</returns>
    public bool NoteStep(Instant now, Duration step)
    {
        if (mark is null || (step >= -KeepsMarkWithin && mark.Value - now <= KeepsMarkWithin))
        {
            return false;
        }

        stoodFor = Instant.MinValue;
        MarkAt(now);
        return true;
    }

    /// <summary>Takes what has come due, if anything has.</summary>
    /// <param name="now">The time by the wall clock.</param>
    /// <param name="skipsOne">Whether a person asked to leave one out; false afterwards when one was.</param>
    public FloodCall TakeDue(Instant now, ref bool skipsOne)
    {
        if (now < NextDue || mark is not { } before)
        {
            return default;
        }

        var latest = calendar.LatestUpTo(now);
        var count = calendar.CountBetween(Instant.Max(Instant.Max(before, stoodFor), latest - CountsBack), latest);
        MarkAt(latest);
        var due = zone.SayTime(latest, now);
        if (count == 0)
        {
            return FloodCall.LeaveOut($"the flood that began late stands for the one at {due}");
        }

        if (skipsOne)
        {
            skipsOne = false;
            count--;
        }

        if (count == 0)
        {
            return FloodCall.LeaveOut($"a person asked to leave out the flood at {due}");
        }

        var isLate = now - latest > Grace;
        if (isLate && missed == MissedFloods.Skip)
        {
            return FloodCall.LeaveOut($"{Missed(count, due)} and the schedule lets missed floods go");
        }

        markBeforeOwed = before;
        return FloodCall.Run(isLate ? $"{Missed(count, due)} and one flood makes up for it"
            : count > 1 ? $"the schedule floods at {due}, and {Missed(count - 1, null)}"
            : $"the schedule floods at {due}");
    }

    /// <summary>A flood begins that the schedule asked for.</summary>
    public void StandFor(Instant began)
    {
        stoodFor = Instant.Max(stoodFor, calendar.Nearest(began));
        LookAhead();
    }

    /// <summary>Nothing is owed any more.</summary>
    public void Settle() => markBeforeOwed = null;

    /// <summary>Keeps the mark; a flood that is owed is found due or missed again after a restart.</summary>
    public void Save(MemoryWriter writer)
    {
        if ((markBeforeOwed ?? mark) is { } dealtWith)
        {
            writer.Put($"{key}-mark", dealtWith);
        }

        if (stoodFor != Instant.MinValue)
        {
            writer.Put($"{key}-stood-for", stoodFor);
        }
    }

    private void MarkAt(Instant time)
    {
        mark = time;
        LookAhead();
    }

    /// <summary>Asks the calendar once for what every scan wants to know.</summary>
    private void LookAhead()
    {
        NextDue = mark is { } known ? calendar.NextAfter(known) : Instant.MaxValue;
        NextRun = NextDue <= stoodFor ? calendar.NextAfter(stoodFor) : NextDue;
        RunAfterNext = NextRun == Instant.MaxValue ? NextRun : calendar.NextAfter(NextRun);
    }

    private static string Missed(int count, string? last) => count == 1
        ? $"a flood{(last is null ? "" : $" at {last}")} was missed"
        : $"{count} floods{(last is null ? "" : $", the last at {last},")} were missed";
}
