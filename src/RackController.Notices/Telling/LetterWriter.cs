using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices;

/// <summary>Puts tidings into words, for a person.</summary>
/// <param name="site">The site.</param>
/// <param name="alarms">Its alarms.</param>
internal sealed class LetterWriter(Site site, AlarmBook alarms)
{
    /// <summary>More than a person reads; how many more there are is said.</summary>
    private const int MostTold = 40;

    private const string Footer = """
        What stands now is on the page of the rack. Mains power and water together can kill: pull the rack's plug before
        hands go in.
        This is no safety device and is certified to no standard.
        """;

    /// <summary>What it is about, in one line that begins with priority and site.</summary>
    /// <param name="told">The tidings, most urgent first.</param>
    public string Subject(ImmutableArray<Tiding> told)
    {
        var first = told[0];
        var more = told.Length == 1 ? "" : $", and {told.Length - 1} more";
        var word = first.Kind == TidingKind.Test ? "Test" : Capital(first.Priority.InWords());
        return $"{word}, {site.Name}: {Headline(first)}{more}";
    }

    /// <summary>The whole of it as plain text.</summary>
    /// <param name="told">The tidings, most urgent first.</param>
    public string Body(ImmutableArray<Tiding> told)
    {
        var text = new StringBuilder();
        foreach (var tiding in told.Take(MostTold))
        {
            Append(text, tiding);
        }

        if (told.Length > MostTold)
        {
            text.Append(CultureInfo.InvariantCulture, $"And {told.Length - MostTold} more, which the page and the journal have.\n\n");
        }

        return text.Append(Footer).Append('\n').ToString();
    }

    /// <summary>What follows if nobody acts and what to do; null where nothing is known of it.</summary>
    /// <param name="tiding">A tiding.</param>
    public AlarmText? Advice(Tiding tiding) => tiding.Kind switch
    {
        TidingKind.Raised or TidingKind.Unseen => alarms.TextOf(tiding.Subject),
        TidingKind.Silent => new AlarmText(
            tiding.Priority, "nobody knows what the racks do; loads may stand as they were last told",
            "look at the rack and at the board's power; systemctl status rackcontroller says more", "within hours"),
        TidingKind.Stopped => new AlarmText(
            tiding.Priority, "nothing is flooded and nothing is lit until it runs again",
            "start it again when the reason is gone: systemctl start rackcontroller", "within the day"),
        TidingKind.WayFailed => new AlarmText(
            tiding.Priority, "whoever is told that way hears nothing", "see what the page says of it, under Notices", "within the day"),
        _ => null,
    };

    /// <summary>A tiding in one line.</summary>
    /// <param name="tiding">The tiding.</param>
    public static string Headline(Tiding tiding) => tiding.Kind switch
    {
        TidingKind.Raised => tiding.Words,
        TidingKind.Over => $"over: {tiding.Words}",
        TidingKind.Unseen => $"nobody has acknowledged: {tiding.Words}",
        TidingKind.Stopped => $"the controller was stopped, because {tiding.Words}",
        TidingKind.Silent or TidingKind.Back => tiding.Words,
        TidingKind.WayFailed => $"{tiding.Subject} does not get through: {tiding.Words}",
        TidingKind.Test => "notices arrive",
        _ => throw new InvariantBrokenException($"every tiding has its headline, {tiding.Kind} too"),
    };

    private void Append(StringBuilder text, Tiding tiding)
    {
        var isTest = tiding.Kind == TidingKind.Test;
        text.Append(CultureInfo.InvariantCulture, $"{(isTest ? "Test" : Capital(tiding.Priority.InWords()))}: {tiding.Subject}\n");
        Line(text, "What", isTest ? $"this is how notices arrive; it was sent because {tiding.Words}" : Headline(tiding));
        Line(text, tiding.Kind is TidingKind.Raised or TidingKind.Unseen or TidingKind.Silent ? "Since" : "At", Time(tiding.At));
        if (Advice(tiding) is { } advice)
        {
            Line(text, "Do", $"{advice.Action} ({advice.RespondWithin})");
            Line(text, "Else", advice.Consequence);
        }

        text.Append('\n');
    }

    private static void Line(StringBuilder text, string word, string said) =>
        text.Append(CultureInfo.InvariantCulture, $"  {word,-6}{said}\n");

    private string Time(Instant at) =>
        at.InZone(site.Zone).ToString("dddd d MMMM uuuu HH:mm:ss x", CultureInfo.InvariantCulture);

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
