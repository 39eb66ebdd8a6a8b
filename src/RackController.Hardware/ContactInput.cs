using System.Device.Gpio;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>One contact sensor on its input line.</summary>
internal sealed class ContactInput
{
    private readonly ContactLine plan;
    private readonly ContactDebounce debounce;
    private readonly Action wake;
    private volatile bool edgeSeen;
    private bool isHeld;

    internal ContactInput(Sensor sensor, ContactLine plan, Action wake)
    {
        Name = sensor.Name;
        this.plan = plan;
        this.wake = wake;
        debounce = new ContactDebounce(
            sensor.HarmfulValue ?? throw new InvariantBrokenException($"{sensor.Name} is no contact, so it cannot sit on a GPIO line"),
            plan.Debounce);
    }

    /// <summary>The sensor's name.</summary>
    internal string Name { get; }

    /// <summary>The mode of an input with a pull.</summary>
    internal static PinMode ModeOf(LinePull pull) => pull switch
    {
        LinePull.Up => PinMode.InputPullUp,
        LinePull.Down => PinMode.InputPullDown,
        _ => PinMode.Input,
    };

    /// <summary>Takes the line, and has its edges wake the scan where the chip can.</summary>
    /// <exception cref="IOException">The line cannot be had.</exception>
    internal void Claim(GpioController controller)
    {
        isHeld = false;
        debounce.Forget();
        controller.OpenPin(plan.Line.Offset, ModeOf(plan.Pull));
        isHeld = true;
        try
        {
            controller.RegisterCallbackForPinValueChangedEvent(
                plan.Line.Offset, PinEventTypes.Rising | PinEventTypes.Falling, OnEdge);
            ReportsEdges = true;
        }
        catch (IOException)
        {
            // Not every chip has an interrupt for every line. Polling is the truth, so only latency is lost; Describe says so.
            ReportsEdges = false;
        }
    }

    /// <summary>Lets the line go, if it is held, and takes it once more.</summary>
    /// <exception cref="IOException">The line cannot be had.</exception>
    internal void ClaimAgain(GpioController controller)
    {
        isHeld = false;
        if (controller.IsPinOpen(plan.Line.Offset))
        {
            controller.ClosePin(plan.Line.Offset);
        }

        Claim(controller);
    }

    /// <summary>Whether it could not be read last time.</summary>
    internal bool IsLost { get; private set; }

    /// <summary>Whether a change wakes the scan early.</summary>
    internal bool ReportsEdges { get; private set; }

    /// <summary>Reads the level.</summary>
    /// <exception cref="IOException">The line cannot be read.</exception>
    internal void Read(GpioController controller, MonotonicTime now, Readings readings)
    {
        if (!isHeld)
        {
            throw new IOException($"{plan.Line} could not be claimed again");
        }

        // Cleared before the level is read: an edge between the two is seen by the next sample at the latest.
        var changed = edgeSeen;
        edgeSeen = false;
        var isHigh = controller.Read(plan.Line.Offset) == PinValue.High;
        readings[plan.Sensor] = new Reading(
            debounce.Sample(now, isHigh == plan.ActiveLow ? 0 : 1, changed), ReadingQuality.Good, now);
        IsLost = false;
    }

    /// <summary>Says that the line could not be read.</summary>
    internal void Lose(MonotonicTime now, Readings readings)
    {
        IsLost = true;
        debounce.Forget();
        readings[plan.Sensor] = new Reading(0, ReadingQuality.Corrupt, now);
    }

    /// <summary>How the contact is wired, for the log.</summary>
    internal string Describe() =>
        $"{Name}: contact on {plan.Line}, "
        + $"{(plan.ActiveLow ? "low" : "high")} means 1, pull {Text(plan.Pull)}"
        + (ReportsEdges ? string.Empty : ", polled only: this chip reports no edges");

    private static string Text(LinePull pull) => pull switch
    {
        LinePull.Up => "up",
        LinePull.Down => "down",
        _ => "outside the board",
    };

    private void OnEdge(object sender, PinValueChangedEventArgs args)
    {
        edgeSeen = true;
        wake();
    }
}
