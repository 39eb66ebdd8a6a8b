using System.Globalization;
using RackController.Model;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>Whom a rack file asks to be told of alarms, as understood.</summary>
internal static class NoticesSummary
{
    /// <summary>Prints it; nothing where it asks for nobody.</summary>
    /// <param name="site">The site.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(Site site, IAnsiConsole console)
    {
        if (site.Notices is not { } plan)
        {
            return;
        }

        console.WriteLine();
        console.WriteLine("Notices, which the verb `notices` and its unit send:");
        foreach (var (name, atLeast) in plan.Mail.Select(mail => (mail.Name, mail.AtLeast))
            .Concat(plan.Webhooks.Select(webhook => (webhook.Name, webhook.AtLeast))))
        {
            console.WriteLine($"  {name}: {(atLeast == AlarmPriority.Low ? "every alarm" : $"from {atLeast.InWords()} up")}");
        }

        if (plan.Alive is { } alive)
        {
            console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {alive.Name}: every {alive.Every.TotalMinutes:0.#} min"));
        }

        if (plan.Quiet is { } quiet)
        {
            console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"  quiet from {quiet.From:HH':'mm} to {quiet.Until:HH':'mm}, except from {quiet.AtLeast.InWords()} up"));
        }
    }
}
