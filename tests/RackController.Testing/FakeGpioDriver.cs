using System.Device.Gpio;

namespace RackController.Testing;

/// <summary>The extension point of System.Device.Gpio over a <see cref="FakeGpioChip"/>.</summary>
public sealed class FakeGpioDriver : GpioDriver
{
    private const int LineCount = 64;

    private readonly FakeGpioChip chip;
    private readonly Dictionary<int, PinMode> modes = [];
    private readonly Dictionary<int, PinChangeEventHandler> handlers = [];

    internal FakeGpioDriver(FakeGpioChip chip) => this.chip = chip;

    protected override int PinCount => LineCount;

    internal void RaiseEdge(int line, PinValue level)
    {
        if (handlers.TryGetValue(line, out var handler))
        {
            handler(this, new PinValueChangedEventArgs(level == PinValue.High ? PinEventTypes.Rising : PinEventTypes.Falling, line));
        }
    }

    protected override void OpenPin(int pinNumber)
    {
    }

    protected override void ClosePin(int pinNumber)
    {
        if (modes.Remove(pinNumber))
        {
            handlers.Remove(pinNumber);
            chip.Note($"release {pinNumber}");
        }
    }

    protected override void SetPinMode(int pinNumber, PinMode mode)
    {
        chip.Do(GpioCall.Claim, pinNumber);
        modes[pinNumber] = mode;
        chip.Note($"claim {pinNumber} {mode}");
    }

    protected override void SetPinMode(int pinNumber, PinMode mode, PinValue initialValue)
    {
        chip.Do(GpioCall.Claim, pinNumber);
        modes[pinNumber] = mode;
        chip.Set(pinNumber, initialValue);
        chip.Note($"claim {pinNumber} {mode} {initialValue}");
    }

    protected override PinMode GetPinMode(int pinNumber) => modes[pinNumber];

    protected override bool IsPinModeSupported(int pinNumber, PinMode mode) => true;

    protected override PinValue Read(int pinNumber)
    {
        chip.Do(GpioCall.Read, pinNumber);
        chip.Reading?.Invoke();
        return chip.LevelOf(pinNumber);
    }

    protected override void Write(int pinNumber, PinValue value)
    {
        chip.Do(GpioCall.Write, pinNumber);
        chip.Set(pinNumber, value);
        chip.Note($"write {pinNumber} {value}");
    }

    protected override void AddCallbackForPinValueChangedEvent(
        int pinNumber, PinEventTypes eventTypes, PinChangeEventHandler callback)
    {
        chip.Do(GpioCall.Watch, pinNumber);
        handlers[pinNumber] = callback;
    }

    protected override void RemoveCallbackForPinValueChangedEvent(int pinNumber, PinChangeEventHandler callback) =>
        handlers.Remove(pinNumber);

    protected override WaitForEventResult WaitForEvent(
        int pinNumber, PinEventTypes eventTypes, CancellationToken cancellationToken) =>
        throw new NotSupportedException();
}
