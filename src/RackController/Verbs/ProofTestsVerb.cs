using System.Collections.Immutable;
using System.CommandLine;
using NodaTime;
using RackController.Bench;
using RackController.Control;
using RackController.Model;
using RackController.Service;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary><c>proof-tests FILE</c>: what must be tested by hand, how often, when it last passed and when it is due.</summary>
internal static class ProofTestsVerb
{
    private static readonly string[] titles = ["item", "test of a", "every", "last passed", "due"];

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create() => SiteVerb.Create(
        "proof-tests", "List every proof test of a rack: how often, last passed, and when it is due.",
        "A rack file, such as config/demo-four-tier.yaml.", (asked, _) => Run(asked));

    private static int Run(SiteRequest asked)
    {
        var now = SystemClock.Instance.GetCurrentInstant();
        var tests = ProofTestRecord.Read(asked.Site, asked.Folder, now, out var isDriven);
        Print(asked.Site, tests, isDriven ? null : now, Screen.Over(asked.Output));
        return tests.Any(test => test.IsOverdue || test.HasFailed) ? ExitCode.AnswerIsNo : ExitCode.AsExpected;
    }

    private static void Print(Site site, ImmutableArray<ProofTestStatus> tests, Instant? start, IAnsiConsole console)
    {
        var table = new Table { Border = TableBorder.Horizontal };
        table.AddColumns([.. titles.Select(title => new TableColumn(new Text(title)))]);
        foreach (var test in tests)
        {
            string[] cells =
            [
                test.Item, test.Kind.InWords(), $"{test.Interval.TotalDays:0} d", ProofTestWords.LastPass(test, site.Zone),
                Due(test, site.Zone, start),
            ];
            table.AddRow(cells.Select(cell => new Text(cell)));
        }

        console.WriteLine(site.Name);
        console.Write(table);
        var (overdue, failed) = (tests.Count(test => test.IsOverdue), tests.Count(test => test.HasFailed));
        console.WriteLine($"{tests.Length} proof tests, {overdue} overdue, {failed} failed");
        console.WriteLine();
        foreach (var kind in tests.Select(test => test.Kind).Distinct().Order())
        {
            var words = $"The test of a {kind.InWords()} finds {ProofTestFaults.Words(kind)}.";
            foreach (var line in Wrapping.Lines(words, console.Profile.Width))
            {
                console.WriteLine(line);
            }
        }
    }

    // A rack that was never driven is in service from its first run on.
    private static string Due(ProofTestStatus test, DateTimeZone zone, Instant? start) =>
        test.IsOverdue ? $"! {ProofTestWords.Date(test.DueAt, zone)}"
        : start is { } first ? $"{(test.DueAt - first).TotalDays:0} d after the first run"
        : ProofTestWords.Date(test.DueAt, zone);
}
