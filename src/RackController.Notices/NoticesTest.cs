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
    public static async Task<WayTest> SendAsync(Site site, IWay way, Instant now, CancellationToken end)
    {
        var writer = new LetterWriter(site, new AlarmBook(site));
        ImmutableArray<Tiding> told =
            [new(TidingKind.Test, site.Name, AlarmPriority.Low, now, "somebody asked for it in a terminal", now)];
        var body = way.IsForPrograms ? Payload.Of(site, writer, told, now) : writer.Body(told);
        var letter = new Letter(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(10)), way.Name, writer.Subject(told), body, now);
        return new WayTest(way.Name, (await way.SendAsync(letter, end).ConfigureAwait(false)).Fault);
    }

    /// <summary>Gives one sign of life, unless the controller gives none: whoever watches from outside would believe that all is
    /// well.</summary>
    /// <param name="alive">To whom.</param>
    /// <param name="isDriven">Whether the controller gives signs of life.</param>
    /// <param name="end">Ends it.</param>
    public static async Task<WayTest> AskAsync(AlivePing alive, bool isDriven, CancellationToken end) => isDriven
        ? new WayTest(alive.Status.Name, (await alive.AskAsync(end).ConfigureAwait(false)).Fault)
        : new WayTest(alive.Status.Name, null) { NotTried = "not asked, because the controller gives no sign of life" };
}

/// <summary>What came of a test of one way.</summary>
/// <param name="Way">The name of the way.</param>
/// <param name="Fault">Why it does not get through; null where it does, or was not tried.</param>
public sealed record WayTest(string Way, string? Fault)
{
    /// <summary>That it was not tried, and why; null where it was.</summary>
    public string? NotTried { get; init; }
}
