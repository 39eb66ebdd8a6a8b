using System.Globalization;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Service;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>Works of upkeep as a table in a terminal.</summary>
internal static class UpkeepTable
{
    private const double RelaysShownFrom = 0.5;

    private static readonly string[] titles = ["rack", "work", "so far", "due"];

    /// <summary>Prints it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="list">Where its works stand.</param>
    /// <param name="now">The time; null where the racks were never driven.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(Site site, UpkeepList list, Instant? now, IAnsiConsole console)
    {
        var table = new Table { Border = TableBorder.Horizontal };
        table.AddColumns([.. titles.Select(title => new TableColumn(new Text(title)))]);
        foreach (var work in list.Works)
        {
            var soFar = now is null ? "not used yet" : UpkeepWords.Why(work, site.Zone);
            string[] cells = [work.Rack.Name, work.Work.Key(), soFar, Due(work, now, site.Zone)];
            table.AddRow(cells.Select(cell => new Text(cell)));
        }

        console.WriteLine(site.Name);
        console.Write(table);
        var (due, overdue) = (list.Works.Count(work => work.IsDue), list.Works.Count(work => work.IsOverdue));
        console.WriteLine($"{list.Works.Length} works of upkeep, {due} due, {overdue} of them overdue");
        foreach (var relay in list.Relays.Where(relay => relay.Share >= RelaysShownFrom))
        {
            console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{(relay.IsWorn ? "! " : "")}the relay of {relay.Load.Name} has switched {relay.Operations} times of "
                + $"{relay.Load.RatedOperations}"));
        }

        if (due > 0)
        {
            console.WriteLine();
        }

        foreach (var work in list.Works.Where(work => work.IsDue).Select(work => work.Work).Distinct().Order())
        {
            foreach (var line in Wrapping.Lines($"{work.Key()}: {work.Advice()}", console.Profile.Width))
            {
                console.WriteLine(line);
            }
        }
    }

    private static string Due(UpkeepStatus work, Instant? now, DateTimeZone zone) =>
        work.IsOverdue ? "! overdue"
        : work.IsDue ? "! now"
        : now is { } time && work.ExpectedAt(time) is { } at ? $"about {UpkeepWords.Day(at, zone)}"
        : UpkeepWords.Interval(work.Every);
}
