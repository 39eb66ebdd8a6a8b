using System.Globalization;
using RackController.Control;
using RackController.Growing;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Turns a picture of a site into what the page shows.</summary>
/// <param name="site">The site.</param>
/// <param name="speed">How many times faster than real time it runs.</param>
/// <param name="books">The growing book; null for none.</param>
internal sealed class NowViewOf(Site site, double speed, BookDesk? books)
{
    /// <summary>Makes the view of a picture.</summary>
    public NowView View(SiteStatus status) => View(status, GrowsOn.Look(books, site, status.At.Wall));

    private NowView View(SiteStatus status, GrowsOn grows) => new(
        status.At.Wall.InZone(site.Zone).ToString("ddd d MMM yyyy HH:mm:ss", CultureInfo.InvariantCulture),
        [.. Notes(status, grows)],
        [.. status.Alarms.Where(Calls).Select(alarm => new AlarmView(alarm, PageWords.Clock(alarm.Since.Wall, status.At.Wall, site.Zone)))],
        status.Alarms.Count(alarm => !Calls(alarm)),
        [.. site.Racks.Select(rack => new RackViewOf(site, rack, status, grows).View())],
        [.. site.Circuits.Select(circuit => Circuit(circuit, status))],
        [.. status.Due.Select(due => new DueView(PageWords.Clock(due.At, status.At.Wall, site.Zone), due.Subject, due.What, ""))],
        [.. status.Recent.Select(happened => new DueView(
            PageWords.Clock(happened.At.Wall, status.At.Wall, site.Zone), happened.Subject, happened.What, happened.Because))])
    {
        Upkeep = UpkeepWords.HowManyAreDue(status.DueUpkeep.Length),
    };

    // As ISA-18.2 has it: what is shelved, suppressed by design or out of service is listed, and calls nobody.
    private static bool Calls(Alarm alarm) =>
        alarm.State is not (AlarmState.Shelved or AlarmState.SuppressedByDesign or AlarmState.OutOfService);

    private IEnumerable<NoteView> Notes(SiteStatus status, GrowsOn grows)
    {
        var how = site.Io is SimulatedIo ? "simulated" : "drives real loads";
        yield return new NoteView(
            speed > 1 ? string.Create(CultureInfo.InvariantCulture, $"{how}, {speed:0.#} times real time") : how, IsOdd: false);
        if (!status.At.WallTrusted)
        {
            yield return new NoteView("clock not trusted", IsOdd: true);
        }

        if (grows.Fault is { } unreadable)
        {
            yield return new NoteView(unreadable, IsOdd: true);
        }

        if (status.Health.Fault is { } fault)
        {
            yield return new NoteView(fault, IsOdd: true);
        }
    }

    private CircuitView Circuit(Circuit circuit, SiteStatus status)
    {
        var load = CircuitLoad.Of(site, circuit, status);
        return new CircuitView(
            circuit.Name, load.CurrentA, circuit.ContinuousLimitA, load.IsMeasured,
            circuit.SupplySense is { } sense ? RackViewOf.Reading(status.Sensors[sense.Index], circuit.Name, site.Units) : null);
    }
}
