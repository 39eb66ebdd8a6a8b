using System.CommandLine;
using RackController.Bench;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>replay JOURNAL</c>: runs Control again from what a journal has on record, and says whether the same comes out; with
/// <c>--with FILE</c> also what another rack file would have made of it.</summary>
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
        var with = new Option<FileInfo?>("--with")
        {
            Description = "Another rack file: say what it would have made of what is on record.",
            HelpName = "file",
            CustomParser = Parsing.PathOf,
        };
        var verb = new Command("replay", "Decide again what a journal has on record, and say what comes out differently.")
        {
            journal, with,
        };
        verb.SetAction(parsed => Run(
            parsed.GetRequiredValue(journal).ToString(), parsed.GetValue(with)?.ToString(), parsed.InvocationConfiguration));
        return verb;
    }

    private static int Run(string path, string? with, InvocationConfiguration console)
    {
        Site? other = null;
        if (with is not null && (other = RackFileArgument.Read(with, console.Error)) is null)
        {
            return ExitCode.AnswerIsNo;
        }

        using var journal = JournalRecord.Open(path);
        var runs = journal.Runs();
        if (runs.Count == 0)
        {
            EndWhereItIsDamaged(path, journal);
            throw new CouldNotRunException($"{path}: nothing is on record here yet: run the racks first");
        }

        var screen = Screen.Over(console.Output);
        var page = new ReplayPage(journal, screen);
        var whatIf = other is null ? null : new WhatIf(other);
        var isSame = true;
        foreach (var run in runs)
        {
            var site = SiteOf(path, run);
            var replayed = RunReplay.Of(site, run);
            page.Print(site, run, replayed);
            whatIf?.Tell(site, run);
            isSame &= replayed.DifferenceCount == 0;
        }

        page.PrintTotals();
        if (whatIf?.Result() is { } result)
        {
            WhatIfPage.Print(with!, other!, result, screen);
            isSame &= result.DifferenceCount == 0;
        }

        EndWhereItIsDamaged(path, journal);
        return isSame ? ExitCode.AsExpected : ExitCode.AnswerIsNo;
    }

    private static void EndWhereItIsDamaged(string path, JournalRecord journal)
    {
        if (journal.Damage is { } damage)
        {
            throw new CouldNotRunException(
                $"{path}: the file is damaged ({damage}): all that could be read was replayed; for the rest try a copy from before");
        }
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
