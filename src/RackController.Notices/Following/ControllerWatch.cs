using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Notices;

/// <summary>Notices when the controller is stopped or falls silent, and when it is back. A stop that a start follows at once, as with every
/// change of the rack file, is not told.</summary>
/// <param name="site">The site.</param>
/// <param name="book">Where tidings go.</param>
internal sealed class ControllerWatch(Site site, NoticeBook book)
{
    /// <summary>So long without a sign of life is told. A controller that was restarted by its supervisor is back before that.</summary>
    public static readonly Duration SilentAfter = Duration.FromMinutes(3);

    private static readonly Duration RestartWithin = Duration.FromMinutes(1);

    private Duration silence;
    private Instant? lookedAt;
    private bool isStopped;

    /// <summary>That the controller is away, as far as telling of it goes; null while it is not.</summary>
    public Downtime? Down { get; set; }

    /// <summary>Takes an event of the journal.</summary>
    /// <param name="happened">What happened.</param>
    /// <param name="now">The time here.</param>
    public void Take(ControlEvent happened, Instant now)
    {
        if (happened.Kind != EventKind.Controller || happened.Subject != site.Name)
        {
            return;
        }

        if (happened.What == "stopped")
        {
            isStopped = true;
            var isDefect = happened.Because.StartsWith("of a defect", StringComparison.Ordinal);
            Tell(TidingKind.Stopped, isDefect ? AlarmPriority.High : AlarmPriority.Medium, happened.At.Wall, happened.Because, now);
        }
        else if (happened.What == "started")
        {
            isStopped = false;
            silence = Duration.Zero;
            Return(now);
        }
    }

    /// <summary>Looks for signs of life.</summary>
    /// <param name="isAlive">Whether there is a fresh one.</param>
    /// <param name="now">The time here.</param>
    public void Look(bool isAlive, Instant now)
    {
        // A clock that was set makes no silence longer than the pause between two looks can be.
        var since = lookedAt is { } last ? Duration.Max(Duration.Zero, Duration.Min(now - last, Duration.FromSeconds(10))) : Duration.Zero;
        lookedAt = now;
        silence = isAlive ? Duration.Zero : silence + since;
        if (isAlive && !isStopped)
        {
            Return(now);
        }
        else if (silence >= SilentAfter && !isStopped && Down is null)
        {
            Tell(TidingKind.Silent, AlarmPriority.High, now - silence, "the controller gives no sign of life", now);
        }
    }

    private void Tell(TidingKind kind, AlarmPriority priority, Instant at, string words, Instant now)
    {
        if (Down is null)
        {
            Down = new Downtime(priority, ToldIn: null);
            book.Add(new Tiding(kind, site.Name, priority, at, words, now));
        }
    }

    private void Return(Instant now)
    {
        // Quiet hours may hold that it went, and what happened in the night is told in the morning.
        if (Down is { } down
            && (down.ToldIn is not null || book.Pending.Any(tiding => IsDown(tiding) && now - tiding.TakenAt > RestartWithin)))
        {
            book.Add(new Tiding(TidingKind.Back, site.Name, down.Priority, now, "the controller drives the racks again", now)
            {
                Follows = down.ToldIn,
            });
        }
        else if (Down is not null)
        {
            book.TakeBack(site.Name, TidingKind.Stopped, TidingKind.Silent);
        }

        Down = null;
    }

    private static bool IsDown(Tiding tiding) => tiding.Kind is TidingKind.Stopped or TidingKind.Silent;
}

/// <summary>That the controller is away.</summary>
/// <param name="Priority">How urgent that is.</param>
/// <param name="ToldIn">The bundle in which it was told; null while it waits to be.</param>
internal sealed record Downtime(AlarmPriority Priority, string? ToldIn);
