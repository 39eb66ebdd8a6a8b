using RackController.Control.Tests.Scanning;
using RackController.Model;

namespace RackController.Control.Tests.Recording;

/// <summary>A controller that is told a story, scan by scan, and put on record.</summary>
internal sealed class Recorded : IEventSink
{
    private readonly RandomStory story;
    private readonly List<ControlEvent> fresh = [];
    private RackControl control;
    private ScanRecorder recorder;
    private RecordedStory run = new();

    public Recorded(RandomStory story)
    {
        this.story = story;
        control = new RackControl(story.Site, story.Now, memory: null);
        recorder = new ScanRecorder(control, story.Now, memory: null);
    }

    public List<RecordedStory> Runs { get; } = [];

    public int Scans { get; private set; }

    public int ScansOnRecord => Runs.Sum(each => each.Pages.Sum(page => page.Scans.Length));

    public void Take(ControlEvent happened) => fresh.Add(happened);

    public void Scan()
    {
        if (story.StartsAnewAt is { } start)
        {
            EndRun();
            var memory = control.Save();
            control = new RackControl(story.Site, start, memory);
            recorder = new ScanRecorder(control, start, memory);
        }

        fresh.Clear();
        Scans++;
        var commands = control.Scan(story.Now, story.Readings, story.Conditions, story.Requests, this);
        recorder.Note(
            story.Now, story.Readings, story.Conditions, story.Requests, commands,
            System.Runtime.InteropServices.CollectionsMarshal.AsSpan(fresh));
        run.Events.AddRange(fresh);
        run.NoteCommands(story.Site, story.Now, commands);
        if (recorder.IsPageDue)
        {
            run.Pages.Add(RecordedPages.Read(recorder.TakePage().Body));
        }
    }

    public void EndRun()
    {
        run.Pages.Add(RecordedPages.Read(recorder.TakePage().Body));
        Runs.Add(run);
        run = new RecordedStory();
    }
}

/// <summary>What happened in one run, and its record.</summary>
internal sealed class RecordedStory
{
    private string lastCommands = "";

    public List<ControlEvent> Events { get; } = [];

    /// <summary>Every change of the commands, with its moment.</summary>
    public List<string> Commands { get; } = [];

    public List<RecordedPage> Pages { get; } = [];

    public void NoteCommands(Site site, in Moment now, RelayCommands commands)
    {
        var states = string.Concat(site.Loads.Select(load => commands.IsOn(load.Id) ? '1' : '0'));
        if (states != lastCommands)
        {
            lastCommands = states;
            Commands.Add($"{now.Monotonic.Nanoseconds} {states}");
        }
    }
}
