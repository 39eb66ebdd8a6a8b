using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>
/// The controller's board in a run: scans while it has power, remembers what a journal would have kept, and lets its
/// relays fall to rest when the power goes.
/// </summary>
internal sealed class Controller(Site site, SimulatedSite plant, VirtualClock clock, EventLog log)
{
    private readonly BoardIo io = new(plant, site, clock);
    private readonly Readings readings = new(site);
    private readonly List<OperatorRequest> requests = [];
    private ControlMemory? memory;
    private IoOutcome lastWrite = IoOutcome.Ok;
    private IoOutcome told = IoOutcome.Ok;

    /// <summary>The scan in charge; null while the board has no power.</summary>
    public RackControl? Running { get; private set; }

    /// <summary>When the controller could change something by itself, as time of the run.</summary>
    public MonotonicTime NextChange => Running is null ? MonotonicTime.Never : clock.FromBoard(Running.NextChange);

    /// <summary>Whether the next scan will be told something that no reading shows: that a command was not taken, or that
    /// inputs and outputs work again.</summary>
    public bool HasNews => Running is not null && !(told.IsOk && lastWrite.IsOk);

    /// <summary>The board boots and takes over what it remembered.</summary>
    public void Boot()
    {
        Running = new RackControl(site, clock.Moment, memory);
        lastWrite = IoOutcome.Ok;
        told = IoOutcome.Ok;
    }

    /// <summary>The board loses its power. What was asked of it and not yet scanned is lost.</summary>
    public void LosePower()
    {
        memory = Running?.Save() ?? memory;
        Running = null;
        requests.Clear();
        plant.ReleaseRelays(clock.Bench);
    }

    /// <summary>Somebody asks for something; heard at the next scan, and by nobody while the power is away.</summary>
    public void Ask(OperatorRequest request)
    {
        if (Running is not null)
        {
            requests.Add(request);
        }
    }

    /// <summary>One scan, if there is power.</summary>
    public void Scan()
    {
        if (Running is null)
        {
            return;
        }

        var now = clock.Moment;
        var read = io.Read(now.Monotonic, readings);
        told = read.IsOk ? lastWrite : read;
        var conditions = new ScanConditions(told, Duration.Zero);
        var asked = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(requests);
        var commands = Running.Scan(now, readings, conditions, asked, log);
        requests.Clear();
        lastWrite = io.Write(now.Monotonic, commands);
    }
}
