using RackController.Growing;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>A plan on one screen: what it comes to and takes, what cannot be met, and what is to be done in its first week.</summary>
internal static class PlanSummary
{
    private const int DaysShown = 7;

    /// <summary>Prints it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="forecast">What it takes.</param>
    /// <param name="reports">Where the rest of it is.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(Plan plan, Forecast forecast, ReportFolder reports, IAnsiConsole console)
    {
        var request = plan.Request;
        WriteLine(console, $"{request.Site}, from {PlanDates.Full(request.Today)} until {PlanDates.Full(request.Until)}");
        console.WriteLine();
        foreach (var (label, words) in PlanWords.Facts(plan).Concat(ForecastWords.Facts(forecast)))
        {
            WriteBeside(console, $"  {label,-8}", words);
        }

        PrintShortfalls(plan, console);
        PrintTasks(plan, forecast, console);
        console.WriteLine();
        WriteLine(console, $"report: {reports.Html}");
        WriteLine(console, $"labels, calendar and all tasks lie beside it: {PlanWords.FilesBeside}");
        console.WriteLine();
        WriteLine(console, ForecastWords.Caution);
    }

    private static void PrintShortfalls(Plan plan, IAnsiConsole console)
    {
        foreach (var (what, reason, remedy) in PlanWords.Shortfalls(plan))
        {
            console.WriteLine();
            WriteBeside(console, "  not met ", what);
            WriteBeside(console, "  because ", reason);
            WriteBeside(console, "  remedy  ", remedy);
        }

        if (!plan.Remedy.IsEmpty)
        {
            console.WriteLine();
            WriteLine(console, $"  To meet all of them: {string.Join(", and ", plan.Remedy.Select(room => room.Words))}");
        }
    }

    private static void PrintTasks(Plan plan, Forecast forecast, IAnsiConsole console)
    {
        var last = plan.Request.Today.PlusDays(DaysShown - 1);
        foreach (var day in PlanTasks.With(plan, forecast).Where(task => task.Date <= last).GroupBy(task => task.Date))
        {
            console.WriteLine();
            console.WriteLine(PlanDates.Full(day.Key));
            foreach (var task in day)
            {
                WriteLine(console, $"  {task.Words}");
            }
        }
    }

    private static void WriteLine(IAnsiConsole console, string text)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width))
        {
            console.WriteLine(line);
        }
    }

    // What stands in front stays in front: the lines below begin under the words.
    private static void WriteBeside(IAnsiConsole console, string front, string words)
    {
        foreach (var line in Wrapping.Lines(words, console.Profile.Width - front.Length - 1))
        {
            console.WriteLine($"{front} {line}");
            front = new string(' ', front.Length);
        }
    }
}
