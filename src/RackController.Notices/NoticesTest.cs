using System.Collections.Immutable;
using System.Security.Cryptography;
using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices;

/// <summary>Sends a test message at once, past bundles, quiet hours and what waits.</summary>
internal static class NoticesTest
{
    /// <summary>Sends one by a way.</summary>
    /// <param name="site">The site.</param>
    /// <param name="way">The way.</param>
    /// <param name="now">The time.</param>
    /// <param name="end">Ends it.</param>
    public static async Task<(string Way, string? Fault)> SendAsync(Site site, IWay way, Instant now, CancellationToken end)
    {
        var writer = new LetterWriter(site, new AlarmBook(site));
        ImmutableArray<Tiding> told =
            [new(TidingKind.Test, site.Name, AlarmPriority.Low, now, "somebody asked for it in a terminal", now)];
        var body = way.IsForPrograms ? Payload.Of(site, writer, told, now) : writer.Body(told);
        var letter = new Letter(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(10)), way.Name, writer.Subject(told), body, now);
        return (way.Name, (await way.SendAsync(letter, end).ConfigureAwait(false)).Fault);
    }

    /// <summary>Gives one sign of life.</summary>
    /// <param name="alive">To whom.</param>
    /// <param name="end">Ends it.</param>
    public static async Task<(string Way, string? Fault)> AskAsync(AlivePing alive, CancellationToken end) =>
        (alive.Status.Name, (await alive.AskAsync(end).ConfigureAwait(false)).Fault);
}
