using System.Globalization;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Service;

namespace RackController.Live;

/// <summary>What is due next, and what happened last.</summary>
internal static class DueLines
{
    /// <summary>How much upkeep is due, and what the schedule will do next.</summary>
    /// <param name="site">The site.</param>
    /// <param name="status">What to show.</param>
    /// <param name="width">Columns.</param>
    /// <param name="rows">The most rows.</param>
    public static List<StyledLine> Due(Site site, SiteStatus status, int width, int rows)
    {
        var items = status.Due.Select(due => $"{Clock(due.At, status.At.Wall, site)} {due.Subject} {due.What}")
            .Prepend(UpkeepWords.HowManyAreDue(status.DueUpkeep.Length)).OfType<string>().ToList();
        if (items.Count == 0)
        {
            return [new StyledLine().Add("Next  ", Tone.Quiet).Add("nothing is due", Tone.Quiet)];
        }

        var lines = new List<StyledLine>();
        var next = 0;
        while (next < items.Count && lines.Count < Math.Max(1, rows))
        {
            var line = new StyledLine().Add(lines.Count == 0 ? "Next  " : "      ", Tone.Quiet);
            do
            {
                line.Add(items[next++] + "   ");
            }
            while (next < items.Count && line.Width + items[next].Length <= width);
            lines.Add(line);
        }

        return lines;
    }

    /// <summary>What happened last, newest first.</summary>
    /// <param name="site">The site.</param>
    /// <param name="status">What to show.</param>
    /// <param name="width">Columns.</param>
    /// <param name="rows">The most rows.</param>
    public static List<StyledLine> Recent(Site site, SiteStatus status, int width, int rows) =>
    [
        .. status.Recent.Take(Math.Max(0, rows)).Select((happened, index) => new StyledLine()
            .Add(index == 0 ? "Last  " : "      ", Tone.Quiet)
            .AddRest(
                $"{Clock(happened.At.Wall, status.At.Wall, site)} {happened.Subject}: {happened.What}, because {happened.Because}",
                width, Tone.Quiet)),
    ];

    private static string Clock(Instant at, Instant now, Site site)
    {
        var local = at.InZone(site.Zone);
        return local.ToString(local.Date == now.InZone(site.Zone).Date ? "HH:mm:ss" : "ddd HH:mm:ss", CultureInfo.InvariantCulture);
    }
}
