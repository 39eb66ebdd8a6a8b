using System.CommandLine;
using NodaTime;
using NodaTime.Text;
using RackController.Bench;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>tune FILE</c>: fits a rack to the times of its floods, and writes that into its file.</summary>
internal static class TuneVerb
{
    private static readonly Option<string?> rackOption = new("--rack")
    {
        Description = "The rack, where the file has several.",
        HelpName = "name",
    };

    private static readonly Option<DirectoryInfo?> stateOption = new("--state")
    {
        Description = "The folder of its journal, whose floods are taken. Default: the one that `run` uses.",
        HelpName = "folder",
    };

    private static readonly Option<LocalDate?> sinceOption = new("--since")
    {
        Description = "Only floods from this date on, such as the day on which the screen was cleaned.",
        HelpName = "date",
        CustomParser = result => Parsing.Local(
            LocalDatePattern.Iso, date => date, result, "--since takes a date such as 2026-03-29"),
    };

    private static readonly Option<HandTimes[]> fillOption = Times(
        "--fill", "Times by hand: a tier and how long after the pump's start water ran into its standpipe, in minutes and seconds, "
        + "flood by flood: 2=3:10,3:14,3:09.");

    private static readonly Option<HandTimes[]> drainOption = Times(
        "--drain", "The same for draining: how long after the pump's stop less than 3 mm stood in the tray.");

    private static readonly Option<bool> writeOption = new("--write")
    {
        Description = "Write without asking.",
    };

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("The rack file.");
        var verb = new Command("tune", "Fit a rack to the times of its floods, so that the bench foretells this rack.")
        {
            file, rackOption, stateOption, sinceOption, fillOption, drainOption, writeOption,
        };
        verb.Validators.Add(asked =>
        {
            if (asked.GetResult(sinceOption) is not null && (asked.GetResult(fillOption) ?? asked.GetResult(drainOption)) is not null)
            {
                asked.AddError("--since chooses among floods on record, which --fill and --drain replace: leave out --since or both");
            }
        });
        verb.SetAction(parsed => Run(parsed.GetRequiredValue(file).ToString(), parsed));
        return verb;
    }

    private static Option<HandTimes[]> Times(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "tier=times",
        AllowMultipleArgumentsPerToken = true,
        CustomParser = result => StopwatchTimes.Read(result, name),
    };

    private static int Run(string path, ParseResult parsed)
    {
        var console = parsed.InvocationConfiguration;
        if (RackFileArgument.Read(path, console.Error, out var text) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        var rack = RackOf(site, path, parsed.GetValue(rackOption));
        var folder = StateFolder.OfDriver(parsed.GetValue(stateOption)?.ToString(), path, site.Io);
        var (fills, drains) = (parsed.GetValue(fillOption) ?? [], parsed.GetValue(drainOption) ?? []);
        var now = SystemClock.Instance.GetCurrentInstant();
        var times = fills.Length + drains.Length > 0
            ? TuneTimes.ByHand(rack, fills, drains, now.InZone(site.Zone).Date)
            : FromJournal(site, rack, folder, parsed.GetValue(sinceOption));
        var outcome = RackTuning.Of(rack, times);
        if (outcome.Tuned is not { } tuned)
        {
            console.Error.WriteLine($"{path}: {rack.Name}: {outcome.Refusal}");
            return ExitCode.AnswerIsNo;
        }

        TunePage.Print(TunedWords.Of(tuned, ShownUnits.Metric, rack.Measured), Screen.Over(console.Output));
        if (parsed.GetValue(writeOption) || IsWanted(path, console.Output))
        {
            Write(new RackFileShelf(path, folder.RackFileVersions), text, tuned, now);
            console.Output.WriteLine(
                $"{path} has it. A service that is running goes by the file as it was until it starts anew.");
        }
        else
        {
            console.Output.WriteLine("Nothing was written: say --write to put it into the file.");
        }

        return ExitCode.AsExpected;
    }

    private static Rack RackOf(Site site, string path, string? name)
    {
        var names = string.Join(", ", site.Racks.Select(rack => rack.Name));
        return name is null
            ? site.Racks.Length == 1 ? site.Racks[0] : throw new CouldNotRunException($"{path}: say --rack with one of {names}")
            : site.Racks.FirstOrDefault(rack => rack.Name == name)
                ?? throw new CouldNotRunException($"{path}: there is no rack `{name}`: say --rack with one of {names}");
    }

    private static TuneTimes FromJournal(Site site, Rack rack, StateFolder folder, LocalDate? since)
    {
        if (!File.Exists(folder.Journal))
        {
            throw new CouldNotRunException(
                $"{folder.Journal}: there is no journal: flood with `run` first, or say times by hand with --fill and --drain");
        }

        using var journal = JournalHistory.Open(folder.Journal);
        var floods = new FloodTimings(site, rack).Newest(journal, since?.AtStartOfDayInZone(site.Zone).ToInstant());
        if (floods.IsEmpty)
        {
            var none = $"{folder.Journal}: no flood of {rack.Name} is on record with times: say them by hand with --fill and --drain.";
            throw new CouldNotRunException(string.Join(' ', new FloodLog(site, rack).Lacking().Prepend(none)));
        }

        return TuneTimes.OnRecord(floods, site.Zone);
    }

    private static bool IsWanted(string path, TextWriter output)
    {
        if (!Screen.IsTerminal(output) || Console.IsInputRedirected)
        {
            return false;
        }

        output.Write($"Write this into {path}? [y/N] ");
        return Console.In.ReadLine()?.Trim() is "y" or "Y" or "yes";
    }

    private static void Write(RackFileShelf shelf, string text, TunedRack tuned, Instant now)
    {
        var section = MeasuredSection.Put(text, tuned.Rack, tuned.Rack.Measured!)
            ?? throw new CouldNotRunException($"{shelf.Name}: {MeasuredSection.NoRoomIn(tuned.Rack)}");
        try
        {
            if (shelf.Read() != text)
            {
                throw new CouldNotRunException($"{shelf.Name}: the file was changed meanwhile, and stays as it is: run `tune` again");
            }

            shelf.Replace(section, now);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new CouldNotRunException(
                $"{shelf.Name}: it cannot be written ({e.Message.ReplaceLineEndings(" ").TrimEnd('.')}): run this as who may, or name a "
                + "folder for what it was before with --state", e);
        }
    }
}
