using NodaTime;
using RackController.RackFile.Binding;
using RackController.RackFile.Building;
using RackController.RackFile.Checks;
using RackController.RackFile.Mappings;

namespace RackController.RackFile;

/// <summary>
/// Reads a rack file into a site. Whatever a person may have written, it answers with complaints and never with an
/// exception, and it says everything that is wrong at once.
/// </summary>
public static class RackFileReader
{
    /// <summary>Reads a rack file.</summary>
    /// <param name="path">Its path, which complaints repeat.</param>
    /// <param name="today">The local date at a place, by its zone, for whoever judges the file: what it says to have been on a day to come
    /// is refused. Null for whoever goes by it: a board whose clock is wrong drives its racks all the same.</param>
    public static RackFileResult Read(string path, Func<DateTimeZone, LocalDate>? today = null)
    {
        var complaints = new Complaints(path);
        var outcome = TextFile.Read(path, complaints, out var text);
        return outcome == TextFileOutcome.Read
            ? Parse(text, path, today)
            : new RackFileResult(null, complaints.Sorted(), CouldBeRead: outcome != TextFileOutcome.Unreadable);
    }

    /// <summary>Reads the text of a rack file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">What complaints call the file.</param>
    /// <param name="today">The local date at a place, for whoever judges the file; null for whoever goes by it.</param>
    public static RackFileResult Parse(string text, string fileName, Func<DateTimeZone, LocalDate>? today = null)
    {
        var complaints = new Complaints(fileName);
        var site = Bind(text, today, complaints);
        return new RackFileResult(
            site is null || complaints.HasErrors ? null : SiteBuilder.Build(site), complaints.Sorted(), Text: text);
    }

    private static SitePart? Bind(string text, Func<DateTimeZone, LocalDate>? today, Complaints complaints)
    {
        if (YamlText.Read(text, complaints) is not { } root)
        {
            return null;
        }

        if (NotARackFile(root) is var (what, whatToDo))
        {
            complaints.Refuse(root.Place, $"this is {what}, and a rack file belongs here", whatToDo);
            return null;
        }

        if (SiteMapping.Instance.TryRead("rack file", root, complaints, out var site))
        {
            SiteChecks.Run(site, complaints);
            if (site.Zone is { } zone && today?.Invoke(zone) is { } day)
            {
                MeasuredChecks.RunOn(day, site, complaints);
            }
        }

        return site;
    }

    private static (string What, string WhatToDo)? NotARackFile(MappingNode root) => FileRecognition.KindOf(root) switch
    {
        PlainFile.Scenario when !root.Has("circuits") && !root.Has("racks") =>
            ("a scenario", "name the rack file that the scenario runs on"),
        PlainFile.Orders => ("an orders file", "name the rack file that stands under its `racks`, or give the orders to `plan`"),
        PlainFile.Crops => ("a crops file", "name a rack file; orders that are given to `plan` name this one under their `crops`"),
        _ => null,
    };
}
