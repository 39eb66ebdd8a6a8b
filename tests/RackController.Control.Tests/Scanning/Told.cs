using RackController.Model;

namespace RackController.Control.Tests.Scanning;

/// <summary>A controller that is told a story, and everything that can be seen of it.</summary>
internal sealed class Told : IEventSink
{
    private readonly RandomStory story;
    private readonly List<ControlEvent> events = [];
    private RackControl control;
    private RelayCommands? commands;

    public Told(RandomStory story)
    {
        this.story = story;
        control = new RackControl(story.Site, story.Now, memory: null);
    }

    public RackControl Control => control;

    /// <summary>What happened since it was last forgotten.</summary>
    public IReadOnlyList<ControlEvent> Events => events;

    public IEnumerable<bool> Commands => story.Site.Loads.Select(load => commands!.IsOn(load.Id))
        .Concat(story.Site.Circuits.Select(circuit => commands!.IsCut(circuit.Id)));

    public void Take(ControlEvent happened) => events.Add(happened);

    public void Forget() => events.Clear();

    /// <summary>Starts anew where the story says so.</summary>
    public void FollowRestart()
    {
        if (story.StartsAnewAt is { } start)
        {
            control = new RackControl(story.Site, start, control.Save());
        }
    }

    public RelayCommands Scan() => commands = control.Scan(story.Now, story.Readings, story.Conditions, story.Requests, this);

    /// <summary>What acts now: keys that end in the row of the table.</summary>
    public HashSet<string> Acting() =>
    [
        .. control.Alarms().Where(alarm => alarm.State is AlarmState.Unacknowledged or AlarmState.Acknowledged).Select(alarm => alarm.Key),
        .. control.Why().SelectMany(why => why.Interlocks.Select(
            words => $"{why.Load}/{words[..words.IndexOf(':', StringComparison.Ordinal)]}")),
    ];

    /// <summary>Everything that a person or a journal can see, in lines.</summary>
    public IEnumerable<string> Everything() =>
    [
        .. control.Alarms().Select(alarm => $"{alarm}"),
        .. control.Why().Select(why => $"{why with { Interlocks = [] }} {string.Join("; ", why.Interlocks)}"),
        .. control.Save().Items.Select(item => $"{item.Key} {item.Value}"),
        .. control.ProofTests().Select(test => $"{test}"),
        $"{control.ProofTestUnderWay()}",
        .. control.DueNext().Select(due => $"{due}"),
        .. story.Site.Racks.Select(rack => $"{rack.Name} {control.FloodPhase(rack.Id)}"),
    ];
}
