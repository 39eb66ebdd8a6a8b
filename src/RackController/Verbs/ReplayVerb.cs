using System.CommandLine;
using RackController.Bench;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>replay JOURNAL</c>: runs Control again from what a journal has on record, and says whether the same comes out.</summary>
internal static class ReplayVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var journal = new Argument<FileInfo>("journal")
        {
            Description = "A journal, such as journal.db in the state folder of a rack; it may be in use.",
            CustomParser = Parsing.PathOf,
        };
        var verb = new Command("replay", "Decide again what a journal has on record, and say what comes out differently.") { journal };
        verb.SetAction(parsed => Run(parsed.GetRequiredValue(journal).ToString(), parsed.InvocationConfiguration));
        return verb;
    }

    private static int Run(string path, InvocationConfiguration console)
    {
        using var journal = JournalRecord.Open(path);
        var runs = journal.Runs();
        if (runs.Count == 0)
        {
            throw new CouldNotRunException($"{path}: nothing is on record here yet: run the racks first");
        }

        var page = new ReplayPage(journal, Screen.Over(console.Output));
        var isSame = true;
        foreach (var run in runs)
        {
            var site = SiteOf(path, run);
            var replayed = RunReplay.Of(site, run);
            page.Print(site, run, replayed);
            isSame &= replayed.DifferenceCount == 0;
        }

        page.PrintTotals();
        if (journal.Damage is { } damage)
        {
            throw new CouldNotRunException($"{path}: it is damaged ({damage}): what came before that was replayed");
        }

        return isSame ? ExitCode.AsExpected : ExitCode.AnswerIsNo;
    }

    private static Site SiteOf(string path, RecordedRun run)
    {
        if (run.Facts is not { } facts)
        {
            throw new CouldNotRunException($"{path}: the rack file of run {run.Number} is not on record: replay a journal that has it");
        }

        var result = RackFileReader.Parse(facts.RackFileText, facts.RackFileName);
        return result.Site ?? throw new CouldNotRunException(
            $"{path}: this version does not take the rack file of run {run.Number} any more ({result.Complaints[0]}): "
            + $"replay it with version {facts.Program}");
    }
}
