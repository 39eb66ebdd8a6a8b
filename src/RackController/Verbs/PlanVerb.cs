using System.CommandLine;
using System.Globalization;
using NodaTime;
using NodaTime.Text;
using RackController.Bench;
using RackController.Growing;
using RackController.PlanFiles;
using RackController.Planning;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>plan FILE</c>: makes sowing, moving and harvest dates of orders.</summary>
internal static class PlanVerb
{
    private const double LeastWork = 1;
    private const double MostWork = 3600;

    private static readonly Option<LocalDate?> from = new("--from")
    {
        Description = "The first day of the plan, such as 2026-03-02. Default: what the orders file says, else today.",
        HelpName = "date",
        CustomParser = result => Parsing.Local(LocalDatePattern.Iso, date => date, result, "--from takes a date such as 2026-03-02"),
    };

    private static readonly Option<double> work = new("--work")
    {
        Description = "How long to look for a better plan, in units of about a second of one processor. Default 20.",
        HelpName = "units",
        DefaultValueFactory = _ => Effort.Ordinary.Work,
        CustomParser = result => Parsing.Number(LeastWork, MostWork, result, "--work takes a number from 1 to 3600, such as 20"),
    };

    private static readonly Option<DirectoryInfo> folder = new("--out")
    {
        HelpName = "folder",
        Description = "The folder for the report and the files beside it. Default: out/ and the orders file's name.",
    };

    private static readonly Option<DirectoryInfo?> state = new("--state")
    {
        HelpName = "folder",
        Description = "The state folder whose growing book tells what grows already, in place of `growing` in the orders file.",
    };

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("An orders file, such as config/demo-orders.yaml.");
        var verb = new Command("plan", "Make sowing, moving and harvest dates of orders.") { file, from, work, folder, state };
        verb.SetAction(parsed => Run(parsed, parsed.GetRequiredValue(file)));
        return verb;
    }

    private static int Run(ParseResult parsed, FileInfo file)
    {
        var console = parsed.InvocationConfiguration;
        var reading = OrdersReader.Read(file.ToString(), parsed.GetValue(from), Today.At, BookOf(parsed.GetValue(state)));
        if (reading.Season is not { } season)
        {
            return Complaining.Print(reading.Complaints, reading.CouldBeRead, console.Error);
        }

        Complaining.Print(reading.Complaints, couldBeRead: true, console.Error);
        var path = parsed.GetValue(folder)?.ToString() ?? Path.Combine("out", Path.GetFileNameWithoutExtension(file.Name));
        var reports = ReportFolder.Open(path);
        if (Make(season.Request, new Effort(parsed.GetValue(work)), console.Error) is not { } plan)
        {
            console.Error.WriteLine(
                $"{file}: what grows already has no room until its harvest, whatever is moved: check `growing`, `blackout` and the racks");
            return ExitCode.AnswerIsNo;
        }

        console.Error.WriteLine("runs its days on the simulated racks, to foretell what they take");
        var forecast = PlanForecast.Of(plan, season.Site, season.Forecast);
        reports.Write(plan, forecast);
        PlanSummary.Print(plan, forecast, reports, Screen.Over(console.Output));
        return plan.MeetsWhatIsDue ? ExitCode.AsExpected : ExitCode.AnswerIsNo;
    }

    private static GrowingBook? BookOf(DirectoryInfo? folder)
    {
        if (folder is null)
        {
            return null;
        }

        var path = new StateFolder(folder.ToString()).Book;
        try
        {
            return File.Exists(path)
                ? GrowingBook.Of(new BookFile(path).Read().Entries)
                : throw new CouldNotRunException($"{path}: there is no growing book: name the state folder of the rack");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new CouldNotRunException(e.Message, e);
        }
    }

    private static Plan? Make(PlanRequest request, Effort effort, TextWriter news)
    {
        try
        {
            return Planner.Make(request, effort, found => news.WriteLine(Words(found)));
        }
        catch (SolverMissingException)
        {
            throw new CouldNotRunException(
                "the planning solver is not there: install the package rackcontroller-plan, which brings its libraries");
        }
    }

    private static string Words(PlanProgress found) =>
        string.Create(CultureInfo.InvariantCulture, $"after {found.AfterS:0.0} s: a plan of {found.LitTierDays} lit tier-days")
        + (found.LeastLitTierDays > 0 ? $", where {found.LeastLitTierDays} are needed at least" : "");
}
