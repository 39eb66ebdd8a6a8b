using RackController.Model;

namespace RackController.Control.Tests.Recording;

/// <summary>Runs a controller from what is on record, and nothing else.</summary>
internal sealed class PlayedBack : IEventSink
{
    private readonly List<ControlEvent> events = [];

    public static (IReadOnlyList<ControlEvent> Events, IReadOnlyList<string> Commands) Of(Site site, IReadOnlyList<RecordedPage> pages)
    {
        var played = new PlayedBack();
        var story = new RecordedStory();
        var control = new RackControl(site, pages[0].At, pages[0].State!.Memory);
        var record = new ReadingsOnRecord(site);
        var readings = new Readings(site);
        foreach (var scan in pages.SelectMany(page => page.Scans))
        {
            foreach (var noted in scan.Readings)
            {
                record.Take(new SensorId(noted.Sensor), noted.Reading, scan.At.Monotonic);
            }

            foreach (var sensor in site.Sensors)
            {
                readings[sensor.Id] = record.At(sensor.Id, scan.At.Monotonic);
            }

            var commands = control.Scan(scan.At, readings, scan.Conditions, scan.Requests.AsSpan(), played);
            story.NoteCommands(site, scan.At, commands);
        }

        return (played.events, story.Commands);
    }

    public void Take(ControlEvent happened) => events.Add(happened);
}
