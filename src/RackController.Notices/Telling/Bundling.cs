using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Notices;

/// <summary>Decides which tidings are told now: what happens within half a minute goes together, since one cause raises many alarms, and
/// quiet hours hold what can wait.</summary>
/// <param name="quiet">When only the more urgent gets through; null for never.</param>
/// <param name="zone">The zone of the site.</param>
internal sealed class Bundling(QuietHours? quiet, DateTimeZone zone)
{
    /// <summary>How long the first of several waits for the others.</summary>
    public static readonly Duration Window = Duration.FromSeconds(30);

    /// <summary>What is told now; empty while nothing is.</summary>
    /// <param name="pending">What waits.</param>
    /// <param name="now">The time.</param>
    public ImmutableArray<Tiding> Due(IReadOnlyList<Tiding> pending, Instant now)
    {
        // Whoever tries whether notices arrive looks for a message of that name.
        ImmutableArray<Tiding> tests = [.. pending.Where(tiding => tiding.Kind == TidingKind.Test)];
        if (!tests.IsEmpty)
        {
            return tests;
        }

        var isQuiet = quiet?.Holds(now.InZone(zone).TimeOfDay) ?? false;
        ImmutableArray<Tiding> held = [.. pending.Where(tiding => !IsOver(tiding.HeldUntil, now, NoticeBook.AtMostEvery))];
        ImmutableArray<Tiding> audible =
        [
            // What waits keeps what follows it waiting: the end of an alarm is not told before its beginning.
            .. pending.Where(tiding => (!isQuiet || tiding.Priority >= quiet!.AtLeast)
                && !held.Any(other => other.Subject == tiding.Subject)),
        ];
        return audible.Any(tiding => IsOver(tiding.TakenAt + Window, now, Window)) ? audible : [];
    }

    // A wait that is longer than it can be was begun under another clock.
    private static bool IsOver(Instant? until, Instant now, Duration longest) => until is not { } end || now >= end || end - now > longest;
}
