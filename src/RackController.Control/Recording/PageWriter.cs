using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Puts a page of the record into bytes. It begins with the version of this form, its <see cref="PageKind"/>, its number and its
/// moment; a page that does not continue puts down memory, commands and readings next. Then scan follows scan: what it has, as bits of
/// one byte; how long after the one before, in nanoseconds; and what it has, in the order of those bits.
/// </summary>
internal sealed class PageWriter
{
    public const byte Version = 1;
    public const byte HasClock = 1;
    public const byte HasConditions = 2;
    public const byte HasRequests = 4;
    public const byte HasReadings = 8;
    public const byte HasCommands = 16;
    public const byte HasEvents = 32;

    public const byte FaultNone = 0;
    public const byte FaultSame = 1;
    public const byte FaultNew = 2;

    private readonly ByteWriter bytes = new();
    private Moment last;
    private string? lastFault;

    public int Length => bytes.Length;

    /// <summary>Begins a page, for <see cref="State"/> or scans to follow.</summary>
    public void Begin(PageKind kind, long number, in Moment at)
    {
        bytes.Clear();
        last = at;
        lastFault = null;
        bytes.Put(Version);
        bytes.Put((byte)kind);
        bytes.Put((ulong)number);
        bytes.Put(at);
    }

    /// <summary>Puts down what a page that does not continue begins with.</summary>
    public void State(ControlMemory? memory, RelayCommands commands, ReadOnlySpan<Reading> readings)
    {
        Memory(memory);
        bytes.Put((ulong)commands.Count);
        for (var load = 0; load < commands.Count; load++)
        {
            bytes.Put(commands.IsOn(new LoadId(load)) ? (byte)1 : (byte)0);
        }

        bytes.Put((ulong)readings.Length);
        for (var sensor = 0; sensor < readings.Length; sensor++)
        {
            ReadingCode.Put(sensor, readings[sensor], last.Monotonic, bytes);
        }
    }

    /// <summary>Begins a scan, for what it has to follow in the order of the bits.</summary>
    /// <param name="now">When it is.</param>
    /// <param name="has">What will follow, as bits.</param>
    public void Scan(in Moment now, byte has)
    {
        bytes.Put(has);
        bytes.Put((ulong)(now.Monotonic.Nanoseconds - last.Monotonic.Nanoseconds));
        if ((has & HasClock) != 0)
        {
            bytes.Put(now.Wall);
            bytes.Put(now.WallTrusted ? (byte)1 : (byte)0);
        }

        last = now;
    }

    public void Conditions(in ScanConditions conditions)
    {
        bytes.Put(conditions.LateBy);
        if (conditions.Io.Fault is not { } fault)
        {
            bytes.Put(FaultNone);
        }
        else if (fault == lastFault)
        {
            // A board that fails does so at every scan, in the same words.
            bytes.Put(FaultSame);
        }
        else
        {
            bytes.Put(FaultNew);
            bytes.Put(fault);
            lastFault = fault;
        }
    }

    public void Count(int count) => bytes.Put((ulong)count);

    public void Request(OperatorRequest request) => RequestCode.Put(request, bytes);

    public void Reading(int sensor, in Reading reading) => ReadingCode.Put(sensor, reading, last.Monotonic, bytes);

    public void Command(int load, SwitchState state) => bytes.Put((ulong)load << 1 | (state == SwitchState.On ? 1UL : 0));

    public void Events(in EventsDigest events)
    {
        bytes.Put((ulong)events.Count);
        bytes.Put(events.What);
        bytes.Put(events.Because);
    }

    public byte[] ToArray() => bytes.ToArray();

    private void Memory(ControlMemory? memory)
    {
        bytes.Put(memory is null ? (byte)0 : (byte)1);
        if (memory is null)
        {
            return;
        }

        bytes.Put(memory.SavedAt);
        bytes.Put(memory.WallTrusted ? (byte)1 : (byte)0);
        bytes.Put((ulong)memory.Items.Count);
        foreach (var (key, value) in memory.Items)
        {
            bytes.Put(key);
            bytes.Put(value);
        }
    }
}
