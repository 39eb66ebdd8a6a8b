using RackController.Control;
using RackController.Model;
using RackController.Service;
using RackController.Verbs;

namespace RackController.Live;

/// <summary>The proof tests of a site on one screen: the step that is under way, or the list to choose from. Alarms stay in
/// sight, because a test sets some off.</summary>
internal static class ProofTestPage
{
    private const string Caution = $"{HandsInWords.Plug} {HandsInWords.Hold} What acts in a test is reset as always.";

    /// <summary>Lays out the page.</summary>
    /// <param name="site">The site.</param>
    /// <param name="status">What to show.</param>
    /// <param name="chosen">Which test is chosen, from 0.</param>
    /// <param name="legend">The keys.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <returns>As many lines as fit.</returns>
    public static IReadOnlyList<StyledLine> Lines(
        Site site, SiteStatus status, int chosen, StyledLine legend, int width, int height)
    {
        var lines = new List<StyledLine> { new StyledLine().AddColumn($"{site.Name}: proof tests", width, Tone.Strong) };
        lines.AddRange(AlarmLines.Of(status, width, Math.Max(1, height / 4)));
        lines.Add(new StyledLine());
        if (status.ProofTest is { } test)
        {
            lines.AddRange(Step(test, width));
            lines.Add(new StyledLine());
            lines.AddRange(DueLines.Recent(site, status, width, height - lines.Count - 1));
        }
        else
        {
            lines.AddRange(Wrapping.Lines(Caution, width).Select(line => new StyledLine().Add(line, Tone.Quiet)));
            lines.AddRange(List(site, status, chosen, width, Math.Max(1, height - lines.Count - 1)));
        }

        return [.. lines.Take(height - 1), legend];
    }

    /// <summary>The keys that are for it.</summary>
    /// <param name="test">The test that is under way; null while none is.</param>
    public static StyledLine Legend(ProofTestProgress? test)
    {
        var line = new StyledLine();
        if (test is null)
        {
            Key("J", "next");
            Key("K", "before");
            Key("Enter", "begin");
        }
        else
        {
            if (test is { AsksPerson: true, WaitsForRack: false })
            {
                Key("Y", "it is so");
                Key("N", "it is not");
            }

            Key("Q", "abandon");
            Key("F", "flood");
        }

        Key("H", "hold");
        Key("X", "reset");
        Key("S", "stop");
        Key("P", "back");
        return line;

        void Key(string key, string what) => line.Add(key, Tone.Strong).Add($" {what}  ", Tone.Quiet);
    }

    private static IEnumerable<StyledLine> Step(ProofTestProgress test, int width)
    {
        yield return new StyledLine().Add($"{test.Item}, step {test.Step} of {test.Steps}", Tone.Strong);
        foreach (var line in Wrapping.Lines(test.Words, width))
        {
            yield return new StyledLine().Add(line);
        }

        var what = test.WaitsForRack ? "waits for the rack to be so" : test.AsksPerson ? "say what you see" : "the readings must show it";
        yield return new StyledLine().Add($"{what}: {Math.Ceiling(test.Left.TotalSeconds):0} s left", Tone.Caution);
    }

    private static IEnumerable<StyledLine> List(Site site, SiteStatus status, int chosen, int width, int rows)
    {
        const int kindWidth = 18;
        const int passWidth = 14;
        var nameWidth = Math.Max(10, Math.Min(status.ProofTests.Max(test => test.Item.Length) + 3, width - kindWidth - (2 * passWidth)));
        var first = Math.Clamp(chosen - (rows / 2), 0, Math.Max(0, status.ProofTests.Length - rows));
        for (var i = first; i < Math.Min(first + rows, status.ProofTests.Length); i++)
        {
            var test = status.ProofTests[i];
            var isWrong = test.IsOverdue || test.HasFailed;
            yield return new StyledLine()
                .AddColumn($"{(i == chosen ? ">" : " ")} {test.Item}", nameWidth, i == chosen ? Tone.Strong : Tone.Plain)
                .AddColumn(test.Kind.InWords(), kindWidth, Tone.Quiet)
                .AddColumn(ProofTestWords.LastPass(test, site.Zone), passWidth, test.HasFailed ? Tone.Caution : Tone.Quiet)
                .AddRest(
                    $"{(isWrong ? "! " : "")}due {ProofTestWords.Date(test.DueAt, site.Zone)}", width,
                    isWrong ? Tone.Caution : Tone.Quiet);
        }
    }
}
