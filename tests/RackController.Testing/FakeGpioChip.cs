using System.Device.Gpio;

namespace RackController.Testing;

/// <summary>What is done to a line of a <see cref="FakeGpioChip"/>.</summary>
public enum GpioCall
{
    Claim,
    Read,
    Write,
    Watch,
}

/// <summary>
/// A GPIO chip without a board. It outlives the drivers that open it, keeps a log of everything done to its lines, and
/// fails whatever a test wants.
/// </summary>
/// <param name="label">What the kernel would call it; named in the log.</param>
public sealed class FakeGpioChip(string label)
{
    private readonly Dictionary<int, PinValue> levels = [];
    private readonly Dictionary<int, PinValue> stuck = [];
    private readonly List<(GpioCall Call, int? Line)> failing = [];

    public string Label => label;

    /// <summary>What happened, such as <c>lab: claim 3 Output High</c>, <c>lab: write 3 Low</c>, <c>lab: release 3</c>.</summary>
    public List<string> Log { get; init; } = [];

    public bool IsGone { get; set; }

    /// <summary>Called before a line is read; null while nobody cares.</summary>
    public Action? Reading { get; set; }

    /// <summary>The driver that has the chip open, if any.</summary>
    public FakeGpioDriver? Driver { get; private set; }

    public GpioDriver Open()
    {
        FailIfGone();
        return Driver = new FakeGpioDriver(this);
    }

    public PinValue LevelOf(int line) =>
        stuck.TryGetValue(line, out var level) || levels.TryGetValue(line, out level) ? level : PinValue.Low;

    public void Pull(int line, PinValue level)
    {
        levels[line] = level;
        Driver?.RaiseEdge(line, level);
    }

    /// <summary>Holds a line at a level, whatever is written to it.</summary>
    public void Stick(int line, PinValue level) => stuck[line] = level;

    public void Unstick(int line) => stuck.Remove(line);

    /// <summary>Fails a kind of call from now on, on one line or on all.</summary>
    public void Fail(GpioCall call, int? line = null) => failing.Add((call, line));

    public void Mend() => failing.Clear();

    internal void Do(GpioCall call, int line)
    {
        FailIfGone();
        if (failing.Contains((call, line)) || failing.Contains((call, null)))
        {
            throw new IOException($"line {line} of chip '{label}': {call} fails");
        }
    }

    internal void Set(int line, PinValue level) => levels[line] = level;

    internal void Note(string what) => Log.Add($"{label}: {what}");

    private void FailIfGone()
    {
        if (IsGone)
        {
            throw new IOException($"chip '{label}' is gone");
        }
    }
}
