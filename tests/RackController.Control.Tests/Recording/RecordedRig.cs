using RackController.Model;

namespace RackController.Control.Tests.Recording;

/// <summary>A rig of which every scan is offered to the record from now on, however it is brought about.</summary>
internal sealed class RecordedRig
{
    private readonly Rig rig;
    private readonly Readings readings;
    private OperatorRequest[] asked = [];
    private int told;

    public RecordedRig(Rig rig)
    {
        this.rig = rig;
        readings = new Readings(rig.Site);
        told = rig.Events.Count;
        Recorder = new ScanRecorder(rig.Control, rig.Now, memory: null);
        rig.Rack = Note;
    }

    public ScanRecorder Recorder { get; }

    /// <summary>The pages that were handed over so far.</summary>
    public List<RecordedPage> Pages { get; } = [];

    /// <summary>The scans that are on them.</summary>
    public IReadOnlyList<RecordedScan> Noted => [.. Pages.SelectMany(page => page.Scans)];

    public void Scan(ScanConditions conditions = default, params OperatorRequest[] requests)
    {
        (rig.Conditions, asked) = (conditions, requests);
        rig.Scan(requests);
        (rig.Conditions, asked) = (ScanConditions.Good, []);
    }

    /// <summary>One scan, and the page with it.</summary>
    public RecordedPage ScanAndEndPage(ScanConditions conditions = default, params OperatorRequest[] requests)
    {
        var before = Pages.Count;
        Scan(conditions, requests);
        return Pages.Count > before ? Pages[^1] : EndPage();
    }

    public RecordedPage EndPage()
    {
        Pages.Add(RecordedPages.Read(Recorder.TakePage().Body));
        return Pages[^1];
    }

    private void Note()
    {
        rig.Fill(readings, rig.Now.Monotonic);
        ControlEvent[] events = [.. rig.Events.Skip(told)];
        told = rig.Events.Count;
        Recorder.Note(rig.Now, readings, rig.Conditions, asked, rig.Commands, events);
        if (Recorder.IsPageDue)
        {
            EndPage();
        }
    }
}
