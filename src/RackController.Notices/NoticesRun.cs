using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices;

/// <summary>
/// Tells what the journal of one site has to tell, step by step: reads what is new, makes bundles of it, sends what is due. What must
/// outlast the process is on the disk before anything is sent and after it was, so that a power cut repeats a message at worst, under the
/// same id.
/// </summary>
internal sealed class NoticesRun
{
    private readonly Site site;
    private readonly NoticeParts parts;
    private readonly NoticeBook book;
    private readonly ControllerWatch watch;
    private readonly Bundling bundling;
    private readonly LetterWriter writer;
    private readonly ImmutableArray<Outbox> outboxes;
    private readonly Duration remindAfter;
    private Position? position;
    private readonly Troubles troubles;

    /// <summary>Takes up what an earlier process left.</summary>
    /// <param name="site">The site, whose rack file asks for notices.</param>
    /// <param name="parts">What it works with.</param>
    public NoticesRun(Site site, NoticeParts parts)
    {
        this.site = site;
        this.parts = parts;
        var (alarms, plan) = (new AlarmBook(site), site.Notices!);
        book = new NoticeBook(site, alarms);
        watch = new ControllerWatch(site, book);
        bundling = new Bundling(plan.Quiet, site.Zone);
        writer = new LetterWriter(site, alarms);
        remindAfter = plan.RemindAfter;
        outboxes = [.. parts.Ways.Select(way => new Outbox(way))];
        var kept = parts.File.Read(parts.Clock.GetCurrentInstant(), out var unreadable);
        position = kept.Position;
        troubles = new Troubles(parts.Say);
        troubles.Set(Trouble.KeptLost, unreadable);
        watch.Down = kept.Down;
        book.Restore(kept);
        parts.Alive?.Restore(kept.Ways);
        foreach (var outbox in outboxes)
        {
            outbox.Restore(kept);
        }

        SayWhatNobodySends(kept);
    }

    /// <summary>Does what is to be done now. Nothing here waits for a network.</summary>
    /// <param name="cancellation">Ends what is being sent.</param>
    public void Step(CancellationToken cancellation)
    {
        var now = parts.Clock.GetCurrentInstant();
        var isAlive = parts.IsAlive();
        ReadJournal(now);
        watch.Look(isAlive, now);
        book.Remind(remindAfter, now);
        TakeWhatCameBack(now);
        WriteLetters(now);
        Keep();
        foreach (var outbox in outboxes)
        {
            outbox.SendNext(now, cancellation);
        }

        parts.Alive?.GoOn(isAlive, now, cancellation);
    }

    /// <summary>Waits for what is on its way, after it was told to end, and keeps what came of it.</summary>
    /// <param name="atMost">How long.</param>
    public async Task EndAsync(TimeSpan atMost)
    {
        await Task.WhenAny(Task.WhenAll(outboxes.Select(outbox => outbox.EndAsync())), Task.Delay(atMost)).ConfigureAwait(false);
        TakeWhatCameBack(parts.Clock.GetCurrentInstant());
        Keep();
    }

    // What waits for a way that the rack file has no more is not kept, and never sent.
    private void SayWhatNobodySends(Kept kept)
    {
        foreach (var way in kept.Outbox.GroupBy(letter => letter.Way).Where(way => outboxes.All(outbox => outbox.Way.Name != way.Key)))
        {
            var count = way.Count();
            var waited = count == 1 ? "1 message that waited is" : $"{count} messages that waited are";
            parts.Say($"{way.Key}: {waited} dropped: the rack file has this way no more");
        }
    }

    private void ReadJournal(Instant now)
    {
        try
        {
            var (events, reached) = parts.Journal.Read(position, now);
            position = reached;
            foreach (var kept in events)
            {
                book.Take(kept.Event, now);
                watch.Take(kept.Event, now);
            }

            troubles.Set(Trouble.JournalUnreadable, null);
        }
        catch (CouldNotRunException e)
        {
            troubles.Set(Trouble.JournalUnreadable, e.Message);
        }
    }

    private void TakeWhatCameBack(Instant now)
    {
        foreach (var outbox in outboxes)
        {
            var before = outbox.Status;
            var lost = outbox.Take(now);
            if (outbox.Status.Fault is { } fault && fault != before.Fault)
            {
                parts.Say($"{outbox.Way.Name}: {fault}{(lost is null ? "; it is tried again" : "")}");
            }
            else if (outbox.Status.LastSuccess != before.LastSuccess)
            {
                parts.Say($"{outbox.Way.Name}: sent");
            }

            if (lost is ({ IsAboutWays: false }, { } why))
            {
                book.TakeBack(outbox.Way.Name, TidingKind.WayFailed);
                book.Add(new Tiding(TidingKind.WayFailed, outbox.Way.Name, AlarmPriority.Medium, now, why, now));
            }
        }
    }

    private void WriteLetters(Instant now)
    {
        var due = bundling.Due(book.Pending, now);
        if (due.IsEmpty)
        {
            return;
        }

        var bundle = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(10));
        foreach (var outbox in outboxes)
        {
            ImmutableArray<Tiding> told =
            [
                .. due.Where(tiding => tiding.Kind == TidingKind.Test || tiding.Priority >= outbox.Way.AtLeast)
                    .Where(tiding => tiding.Kind != TidingKind.WayFailed || tiding.Subject != outbox.Way.Name)
                    .OrderByDescending(tiding => tiding.Priority),
            ];
            if (!told.IsEmpty)
            {
                outbox.Add(LetterTo(outbox.Way, bundle, told, now), now);
            }
        }

        book.Told(due, bundle, now);
        if (watch.Down is { } down && due.Any(tiding => tiding.Kind is TidingKind.Stopped or TidingKind.Silent))
        {
            watch.Down = down with { ToldIn = bundle };
        }
    }

    private Letter LetterTo(IWay way, string bundle, ImmutableArray<Tiding> told, Instant now) => new(
        IdOf(bundle, way), way.Name, writer.Subject(told),
        way.IsForPrograms ? Payload.Of(site, writer, told, now) : writer.Body(told), now)
    {
        References = [.. told.Select(tiding => tiding.Follows).OfType<string>().Distinct().Select(earlier => IdOf(earlier, way))],
        NextTry = now,
        IsAboutWays = told.All(tiding => tiding.Kind is TidingKind.WayFailed or TidingKind.Test),
    };

    // The same for the same bundle and way in every process, so that what follows can name what it follows.
    private static string IdOf(string bundle, IWay way) =>
        $"{bundle}.{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(way.Name)))[..8]}";

    private void Keep()
    {
        troubles.Set(Trouble.FileUnwritable, parts.File.Write(new Kept
        {
            Trouble = troubles.Worst,
            Ways = [.. outboxes.Select(outbox => outbox.Status), .. parts.Alive is { } alive ? [alive.Status] : (WayStatus[])[]],
            Position = position,
            Down = watch.Down,
            Alarms = book.Known,
            Pending = [.. book.Pending],
            Outbox = [.. outboxes.SelectMany(outbox => outbox.Waiting)],
        }));
    }
}

/// <summary>What a run of notices works with.</summary>
/// <param name="File">Where it keeps what must last.</param>
/// <param name="Journal">What it tells of.</param>
/// <param name="Ways">By which ways it tells.</param>
/// <param name="Alive">Who is given signs of life; null for nobody.</param>
/// <param name="IsAlive">Whether the controller gives any.</param>
/// <param name="Clock">The wall clock.</param>
/// <param name="Say">Writes a line of the log.</param>
internal sealed record NoticeParts(
    NoticesFile File, JournalFollower Journal, ImmutableArray<IWay> Ways, AlivePing? Alive, Func<bool> IsAlive, IClock Clock,
    Action<string> Say);
