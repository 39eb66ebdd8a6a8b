using System.Text.RegularExpressions;

namespace RackController.Crash;

/// <summary>Holds a journal to what its process said while it lived.</summary>
internal static partial class StoryJudge
{
    /// <summary>Whether everything is there that the process vouched for.</summary>
    public static string? Lost(long acknowledged, IReadOnlyList<JournalEvent> kept) =>
        kept.Count < acknowledged ? $"{acknowledged} events were acknowledged and {kept.Count} kept" : null;

    /// <summary>Log and journal tell the same events in the same order, word for word, as far as the shorter of them goes: each may
    /// have been cut off by the kill. The controller's own alarms come from several threads, so their place in the order is not
    /// fixed.</summary>
    public static string? Difference(IEnumerable<string> lines, IReadOnlyList<JournalEvent> kept)
    {
        var said = lines.Select(line => Event().Match(line)).Where(match => match.Success).Select(match => match.Groups[1].Value);
        var pairs = said.Where(HasAPlace).Zip(kept.Select(happened => happened.Words).Where(HasAPlace));
        return pairs.Where(pair => pair.First != pair.Second)
            .Select(pair => $"the log says \"{pair.First}\" where the journal says \"{pair.Second}\"")
            .FirstOrDefault();
    }

    private static bool HasAPlace(string words) => !words.StartsWith("Alarm controller/", StringComparison.Ordinal);

    [GeneratedRegex("^[^ ]+ [A-Z]{3} ([A-Z][a-z]+ .+?: .+, because .+)$")]
    private static partial Regex Event();
}
