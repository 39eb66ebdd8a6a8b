using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices;

/// <summary>
/// Makes tidings of what the journal tells: which alarm has something new to say, and to whom it was said already. Shelved, suppressed
/// and out-of-service alarms say nothing, and what was never told is never told to be over.
/// </summary>
/// <param name="site">The site.</param>
/// <param name="alarms">Its alarms.</param>
internal sealed class NoticeBook(Site site, AlarmBook alarms)
{
    /// <summary>An alarm that comes and goes is told so often at most, unless somebody acknowledged it in between.</summary>
    public static readonly Duration AtMostEvery = Duration.FromMinutes(10);

    private readonly Dictionary<string, KnownAlarm> known = [];
    private readonly List<Tiding> pending = [];

    /// <summary>What waits to be told, oldest first.</summary>
    public IReadOnlyList<Tiding> Pending => pending;

    /// <summary>The alarms that called.</summary>
    public ImmutableArray<KnownAlarm> Known => [.. known.Values.OrderBy(alarm => alarm.Key, StringComparer.Ordinal)];

    /// <summary>Takes up what an earlier process knew.</summary>
    /// <param name="kept">What it kept.</param>
    public void Restore(Kept kept)
    {
        pending.AddRange(kept.Pending);
        foreach (var alarm in kept.Alarms)
        {
            known[alarm.Key] = alarm;
        }
    }

    /// <summary>Takes an event of the journal.</summary>
    /// <param name="happened">What happened.</param>
    /// <param name="now">The time here.</param>
    public void Take(ControlEvent happened, Instant now)
    {
        switch (happened.Kind)
        {
            case EventKind.Alarm:
                TakeAlarm(happened, now);
                break;
            case EventKind.Controller when happened.What == NoticesStatus.TestAsked:
                Add(new Tiding(TidingKind.Test, site.Name, AlarmPriority.Low, happened.At.Wall, happened.Because, now));
                break;
            default:
                break;
        }
    }

    /// <summary>Adds something that is told.</summary>
    /// <param name="tiding">What.</param>
    public void Add(Tiding tiding) => pending.Add(tiding);

    /// <summary>Takes back what was not told yet.</summary>
    /// <param name="kinds">What sort of things.</param>
    /// <param name="subject">What they are about.</param>
    /// <returns>Whether there was any.</returns>
    public bool TakeBack(string subject, params ReadOnlySpan<TidingKind> kinds)
    {
        var wanted = kinds.ToArray();
        return pending.RemoveAll(tiding => tiding.Subject == subject && wanted.Contains(tiding.Kind)) > 0;
    }

    /// <summary>Tells once more of urgent alarms that nobody acknowledged.</summary>
    /// <param name="after">After how long.</param>
    /// <param name="now">The time here.</param>
    public void Remind(Duration after, Instant now)
    {
        foreach (var alarm in known.Values.ToList())
        {
            if (alarm is { ToldAt: { } told, IsSeen: false, IsReminded: false, IsOver: false } && now - told >= after
                && PriorityOf(alarm.Key) >= AlarmPriority.High)
            {
                known[alarm.Key] = alarm with { IsReminded = true };
                Add(Of(TidingKind.Unseen, alarm, alarm.Since, now));
            }
        }
    }

    /// <summary>Lets go of what was told.</summary>
    /// <param name="told">What.</param>
    /// <param name="bundle">The name of the bundle that it was told in.</param>
    /// <param name="now">The time here.</param>
    public void Told(IReadOnlyCollection<Tiding> told, string bundle, Instant now)
    {
        pending.RemoveAll(told.Contains);
        foreach (var raised in told.Where(tiding => tiding.Kind == TidingKind.Raised))
        {
            if (known.TryGetValue(raised.Subject, out var alarm))
            {
                known[raised.Subject] = alarm with { ToldIn = bundle, ToldAt = now };
            }
        }

        foreach (var old in known.Values.Where(alarm => alarm.IsOver && !(now - alarm.ToldAt < AtMostEvery)).ToList())
        {
            if (!pending.Any(tiding => tiding.Subject == old.Key))
            {
                known.Remove(old.Key);
            }
        }
    }

    private void TakeAlarm(ControlEvent happened, Instant now)
    {
        var key = happened.Subject;
        var before = known.GetValueOrDefault(key);
        if (happened.What == AlarmState.Unacknowledged.InWords())
        {
            Call(happened, before, now);
        }
        else if (happened.What == AlarmState.Acknowledged.InWords())
        {
            TakeBack(key, TidingKind.Unseen);
            Know(before is null ? null : before with { IsSeen = true });
        }
        else if (happened.What == AlarmState.Shelved.InWords() || happened.What == AlarmState.SuppressedByDesign.InWords()
            || happened.What == AlarmState.OutOfService.InWords())
        {
            // Whoever put it aside knows of it.
            TakeBack(key, TidingKind.Raised, TidingKind.Over, TidingKind.Unseen);
            known.Remove(key);
        }
        else if (before is { IsOver: false })
        {
            TakeBack(key, TidingKind.Unseen);
            Know(before with { IsOver = true });
            Add(Of(TidingKind.Over, before, happened.At.Wall, now) with { Words = WordsOfEnd(happened, before) });
        }
        else
        {
            Know(before is null ? null : before with { IsSeen = true });
        }
    }

    private void Call(ControlEvent happened, KnownAlarm? before, Instant now)
    {
        // It waits to be told, or has gone and come back before anybody was told that it had gone.
        var isBack = TakeBack(happened.Subject, TidingKind.Over);
        if (before is not null && (isBack || pending.Any(tiding => tiding.Subject == before.Key && tiding.Kind == TidingKind.Raised)))
        {
            Know(before with { IsOver = false });
            return;
        }

        var isFlapping = before is { IsSeen: false, ToldAt: { } told } && now - told < AtMostEvery;
        Know(new KnownAlarm(happened.Subject, happened.At.Wall, happened.Because) { ToldAt = before?.ToldAt });
        Add(new Tiding(
            TidingKind.Raised, happened.Subject, PriorityOf(happened.Subject), happened.At.Wall, happened.Because, now)
        {
            HeldUntil = isFlapping ? before!.ToldAt + AtMostEvery : null,
        });
    }

    private void Know(KnownAlarm? alarm)
    {
        if (alarm is not null)
        {
            known[alarm.Key] = alarm;
        }
    }

    private static string WordsOfEnd(ControlEvent happened, KnownAlarm before) => happened.What == AlarmState.Latched.InWords()
        ? $"{before.Cause}; it stays latched until somebody resets it"
        : before.Cause;

    private Tiding Of(TidingKind kind, KnownAlarm alarm, Instant at, Instant now) =>
        new(kind, alarm.Key, PriorityOf(alarm.Key), at, alarm.Cause, now) { Follows = alarm.ToldIn };

    // An alarm that the site does not have any more, since its rack file was changed, is told as what it mostly was.
    private AlarmPriority PriorityOf(string key) => alarms.PriorityOf(key) ?? AlarmPriority.Medium;
}
