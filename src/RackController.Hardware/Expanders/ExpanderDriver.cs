using System.Device.Gpio;

namespace RackController.Hardware.Expanders;

/// <summary>The lines of a part on a bus as a driver of System.Device.Gpio. Pins are numbered from 0. Outputs only: a float does not
/// wait for a bus. Letting go changes nothing: the lines stay at their last levels, and belong to whoever made them.</summary>
/// <param name="lines">The lines.</param>
/// <param name="count">How many there are.</param>
internal sealed class ExpanderDriver(ExpanderLines lines, int count) : GpioDriver
{
    /// <inheritdoc/>
    protected override int PinCount => count;

    /// <inheritdoc/>
    protected override void OpenPin(int pinNumber)
    {
        if (pinNumber < 0 || pinNumber >= count)
        {
            throw new GpioUnavailableException($"The part has lines 0 to {count - 1}, but the rack file asks for line {pinNumber}.");
        }
    }

    /// <inheritdoc/>
    protected override void ClosePin(int pinNumber)
    {
        // Driven on: a relay's line is safer at its level than without one.
    }

    /// <inheritdoc/>
    protected override void SetPinMode(int pinNumber, PinMode mode) =>
        throw new NotSupportedException("An output is claimed together with its first level, or a relay may click.");

    /// <inheritdoc/>
    protected override void SetPinMode(int pinNumber, PinMode mode, PinValue initialValue) =>
        lines.Claim(pinNumber, initialValue == PinValue.High);

    /// <inheritdoc/>
    protected override PinMode GetPinMode(int pinNumber) => PinMode.Output;

    /// <inheritdoc/>
    protected override bool IsPinModeSupported(int pinNumber, PinMode mode) => mode == PinMode.Output;

    /// <inheritdoc/>
    protected override PinValue Read(int pinNumber) => lines.IsHigh(pinNumber) ? PinValue.High : PinValue.Low;

    /// <inheritdoc/>
    protected override void Write(int pinNumber, PinValue value) => lines.Write(pinNumber, value == PinValue.High);

    /// <inheritdoc/>
    protected override void AddCallbackForPinValueChangedEvent(
        int pinNumber, PinEventTypes eventTypes, PinChangeEventHandler callback) =>
        throw new NotSupportedException("A part on a bus has outputs only.");

    /// <inheritdoc/>
    protected override void RemoveCallbackForPinValueChangedEvent(int pinNumber, PinChangeEventHandler callback) =>
        throw new NotSupportedException("A part on a bus has outputs only.");

    /// <inheritdoc/>
    protected override WaitForEventResult WaitForEvent(
        int pinNumber, PinEventTypes eventTypes, CancellationToken cancellationToken) =>
        throw new NotSupportedException("A part on a bus has outputs only.");
}
