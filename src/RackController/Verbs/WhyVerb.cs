using System.CommandLine;
using NodaTime;
using NodaTime.Text;
using RackController.Bench;
using RackController.Control;
using RackController.Model;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary><c>why FILE --at TIME</c>: what every load would be doing at a local time, and through which steps.</summary>
internal static class WhyVerb
{
    private const string Advice = "--at takes a local date and time such as 2026-03-29T01:30";
    private static readonly CompositePatternBuilder<LocalDateTime> Accepted = new()
    {
        { LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm"), _ => true },
        { LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm"), _ => true },
        { LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss"), _ => true },
    };

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("A rack file, such as config/demo-four-tier.yaml.");
        var at = new Option<LocalDateTime>("--at")
        {
            Description = "A local date and time, such as 2026-03-29T01:30.",
            HelpName = "time",
            Required = true,
            CustomParser = result => Parsing.Local(Accepted.Build(), time => time.Date, result, Advice),
        };
        var verb = new Command("why", "Say what every load would be doing at a time, and through which steps.") { file, at };
        verb.SetAction(parsed => Run(parsed.GetRequiredValue(file), parsed.GetValue(at), parsed.InvocationConfiguration));
        return verb;
    }

    private static int Run(FileInfo file, LocalDateTime at, InvocationConfiguration console)
    {
        if (RackFileArgument.Read(file.ToString(), console.Error) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        Print(WhyThen.Foretell(site, at), Screen.Over(console.Output));
        return ExitCode.AsExpected;
    }

    private static void Print(WhyThen why, IAnsiConsole console)
    {
        var day = new LocalDay(why.Site, why.At.InZone(why.Site.Zone).Date);
        console.WriteLine($"{why.Site.Name}, {day.Words} {day.ClockWithZone(why.At)} ({why.Site.Zone.Id})");
        if (Explanation(why, day) is { } explanation)
        {
            foreach (var line in Wrapping.Lines(explanation, console.Profile.Width))
            {
                console.WriteLine(line);
            }
        }

        foreach (var load in why.Loads)
        {
            console.WriteLine();
            Print(why.Site, load, console);
        }

        console.WriteLine();
        console.WriteLine("Due next");
        foreach (var due in why.Next.Take(5))
        {
            var dueDay = new LocalDay(why.Site, due.At.InZone(why.Site.Zone).Date);
            console.WriteLine($"  {dueDay.ClockWithZone(due.At)}  {due.Subject}: {due.What}");
        }
    }

    private static void Print(Site site, LoadWhy load, IAnsiConsole console)
    {
        console.WriteLine($"{site[load.Load].Name} is {(load.State == SwitchState.On ? "on" : "off")}: {load.Summary}");
        Step(console, "demand", load.Demand);
        foreach (var objection in load.Interlocks)
        {
            Step(console, "interlock", objection);
        }

        if (load.Interlocks.IsEmpty)
        {
            Step(console, "interlocks", "none objects");
        }

        Step(console, "admission", load.Admission);
    }

    private static void Step(IAnsiConsole console, string step, string words) => console.WriteLine($"  {step,-11} {words}");

    private static string? Explanation(WhyThen why, LocalDay day)
    {
        var asked = LocalTimePattern.CreateWithInvariantCulture("HH:mm").Format(why.Asked.TimeOfDay);
        return why.Fate switch
        {
            LocalTimeFate.Skipped => $"{asked} does not come on this day. {day.ChangeInWords} This is the first moment after the gap.",
            LocalTimeFate.Twice => $"{asked} comes twice on this day. {day.ChangeInWords} This is the first time.",
            _ => null,
        };
    }
}
