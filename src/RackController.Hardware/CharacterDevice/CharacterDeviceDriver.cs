using System.Device.Gpio;

namespace RackController.Hardware.CharacterDevice;

/// <summary>
/// The lines of one chip through the kernel's GPIO character device, as a driver of System.Device.Gpio. Pins are numbered
/// by offset.
/// </summary>
/// <remarks>
/// Why not one of the library's own drivers: traced on Debian's kernel with gpio-sim, LibGpiodV2Driver opens a line that
/// shall begin High by driving it Low for 0.02 to 5 ms, which energises an active-low relay at every start; LibGpiodDriver
/// does not, but needs libgpiod 1, which newer Debian no longer carries, and its Write reports no error once the chip is
/// gone; SysFsDriver leaves a line driven after the process has died. This one takes direction and level in one request,
/// reports the kernel's error on every call, and needs no native library.
/// </remarks>
internal sealed class CharacterDeviceDriver : GpioDriver
{
    private readonly GpioChip chip;
    private readonly string consumer;
    private readonly HeldLine?[] lines;
    private EdgeWatch? edges;

    /// <summary>Opens a chip. No line is touched yet.</summary>
    /// <param name="chipName">The label that the kernel gives the chip, or its device file.</param>
    /// <param name="consumer">Under what name lines are held; at most 31 bytes.</param>
    /// <exception cref="GpioUnavailableException">There is no such chip, or it may not be opened.</exception>
    public CharacterDeviceDriver(string chipName, string consumer)
    {
        chip = GpioChips.Open(chipName);
        this.consumer = consumer;
        lines = new HeldLine?[chip.LineCount];
    }

    /// <summary>The label of the chip.</summary>
    internal string ChipLabel => chip.Label;

    /// <inheritdoc/>
    protected override int PinCount => lines.Length;

    /// <summary>Checks that the chip has the line. It is held only once its mode is set, so that an output never exists
    /// without its level.</summary>
    /// <param name="pinNumber">The line's offset.</param>
    /// <exception cref="GpioUnavailableException">The chip has no such line.</exception>
    protected override void OpenPin(int pinNumber)
    {
        if (pinNumber < 0 || pinNumber >= lines.Length)
        {
            throw ChipSight.NoSuchLine(chip.Label, lines.Length, pinNumber);
        }
    }

    /// <summary>Releases a line. What it does then is up to the pin driver of the board.</summary>
    /// <param name="pinNumber">The line's offset.</param>
    protected override void ClosePin(int pinNumber)
    {
        StopWatching();
        lines[pinNumber]?.Dispose();
        lines[pinNumber] = null;
        for (var offset = 0; offset < lines.Length; offset++)
        {
            if (lines[offset] is { Changed: not null } line)
            {
                Watch(offset, line);
            }
        }
    }

    /// <summary>Takes a line as an input.</summary>
    /// <param name="pinNumber">The line's offset.</param>
    /// <param name="mode">An input mode. An output needs its first level too.</param>
    /// <exception cref="NotSupportedException">Asked for an output without a level.</exception>
    protected override void SetPinMode(int pinNumber, PinMode mode)
    {
        if (mode == PinMode.Output)
        {
            throw new NotSupportedException("An output is claimed together with its first level, or a relay may click.");
        }

        SetPinMode(pinNumber, mode, PinValue.Low);
    }

    /// <summary>Takes a line as an input, or as an output that drives a level from its first instant.</summary>
    /// <param name="pinNumber">The line's offset.</param>
    /// <param name="mode">What the line shall be.</param>
    /// <param name="initialValue">The first level of an output.</param>
    /// <exception cref="IOException">The line cannot be had.</exception>
    protected override void SetPinMode(int pinNumber, PinMode mode, PinValue initialValue)
    {
        ClosePin(pinNumber);
        lines[pinNumber] = HeldLine.Take(chip, pinNumber, mode, initialValue, consumer);
    }

    /// <inheritdoc/>
    protected override PinMode GetPinMode(int pinNumber) => Held(pinNumber).Mode;

    /// <inheritdoc/>
    protected override bool IsPinModeSupported(int pinNumber, PinMode mode) =>
        mode is PinMode.Input or PinMode.InputPullUp or PinMode.InputPullDown or PinMode.Output;

    /// <inheritdoc/>
    protected override PinValue Read(int pinNumber) => Held(pinNumber).Read();

    /// <inheritdoc/>
    protected override void Write(int pinNumber, PinValue value) => Held(pinNumber).Write(value);

    /// <summary>Calls back on every change of an input, from a thread of the driver.</summary>
    /// <param name="pinNumber">The line's offset.</param>
    /// <param name="eventTypes">Both edges are reported, whichever are asked for.</param>
    /// <param name="callback">What to call. It must not throw.</param>
    /// <exception cref="IOException">The chip has no interrupt for this line.</exception>
    protected override void AddCallbackForPinValueChangedEvent(
        int pinNumber, PinEventTypes eventTypes, PinChangeEventHandler callback)
    {
        var line = Held(pinNumber);
        line.ReportEdges();
        line.Changed += callback;
        Watch(pinNumber, line);
    }

    /// <inheritdoc/>
    protected override void RemoveCallbackForPinValueChangedEvent(int pinNumber, PinChangeEventHandler callback) =>
        Held(pinNumber).Changed -= callback;

    /// <summary>Not offered: the scan polls, and edges only wake it.</summary>
    /// <param name="pinNumber">The line's offset.</param>
    /// <param name="eventTypes">Not used.</param>
    /// <param name="cancellationToken">Not used.</param>
    /// <exception cref="NotSupportedException">Always.</exception>
    protected override WaitForEventResult WaitForEvent(
        int pinNumber, PinEventTypes eventTypes, CancellationToken cancellationToken) =>
        throw new NotSupportedException("Register a callback instead.");

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        // The base class has a finalizer, which also runs when the constructor threw: then nothing here exists yet.
        if (disposing)
        {
            StopWatching();
            Array.ForEach(lines, line => line?.Dispose());
            Array.Clear(lines);
            chip.Device.Dispose();
        }

        base.Dispose(disposing);
    }

    private void Watch(int offset, HeldLine line)
    {
        edges ??= new EdgeWatch();
        edges.Add(offset, line);
    }

    private void StopWatching()
    {
        edges?.Dispose();
        edges = null;
    }

    private HeldLine Held(int pinNumber) =>
        lines[pinNumber] ?? throw new InvalidOperationException($"Line {pinNumber} of chip '{chip.Label}' is not held.");
}
