using System.CommandLine;
using RackController.Notices;
using RackController.Service;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary><c>doctor FILE</c>: says what a board and its host lack to drive a rack, and what to do about it.</summary>
internal static class DoctorVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create() => SiteVerb.Create(
        "doctor", "Look at board and host: permissions, chips, lines, sensors, clock, watchdogs. Drives nothing.",
        "The rack file that the board is to drive.", (asked, _) => Run(asked));

    private static int Run(SiteRequest asked)
    {
        var screen = Screen.Over(asked.Output);
        List<Finding> findings = [];
        foreach (var finding in Doctor.Look(asked.Site, asked.Folder).Concat(NoticesCheckup.Look(asked.Site, asked.Folder)))
        {
            findings.Add(finding);
            Print(finding, screen);
        }

        var wrong = findings.Count(finding => finding.Weight == FindingWeight.Wrong);
        var doubtful = findings.Count(finding => finding.Weight == FindingWeight.Doubtful);
        screen.WriteLine($"{findings.Count - wrong - doubtful} sound, {doubtful} doubtful, {wrong} wrong");
        return wrong == 0 ? ExitCode.AsExpected : ExitCode.AnswerIsNo;
    }

    private static void Print(Finding finding, IAnsiConsole screen)
    {
        const int Indent = 10;
        var word = finding.Weight switch
        {
            FindingWeight.Sound => "sound",
            FindingWeight.Doubtful => "doubtful",
            _ => "wrong",
        };
        var lines = Wrapping.Lines($"{finding.Subject}: {finding.Text}", screen.Profile.Width - Indent).ToList();
        for (var i = 0; i < lines.Count; i++)
        {
            screen.WriteLine((i == 0 ? word : "").PadRight(Indent) + lines[i]);
        }
    }
}
