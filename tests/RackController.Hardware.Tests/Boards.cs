using System.Device.Gpio;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests;

/// <summary>A rack on two fake chips: relays on "relays", contacts on "contacts" unless a test says otherwise.</summary>
internal sealed class Boards
{
    internal const int PumpLine = 0;
    internal const int LowFloatLine = 16;

    private readonly Dictionary<string, FakeGpioChip> chips = [];

    internal Boards(bool activeLow = true, bool oneChip = false)
    {
        Log = [];
        Relays = Chip("relays");
        Contacts = Chip("contacts");
        var site = Sites.OneRack();
        Site = site with
        {
            Io = new GpioIo(
                [.. site.Loads.Select(load => new RelayLine(load.Id, new GpioLine("relays", load.Id.Index), activeLow))],
                [.. site.Sensors.Select(sensor => new ContactLine(
                    sensor.Id, new GpioLine(oneChip ? "relays" : "contacts", LowFloatLine + sensor.Id.Index),
                    ActiveLow: false, LinePull.Up, Duration.FromMilliseconds(50)))]),
        };
        Readings = new Readings(Site);
        Commands = new RelayCommands(Site);
    }

    /// <summary>What happened on both chips, in order.</summary>
    internal List<string> Log { get; }

    internal FakeGpioChip Relays { get; }

    internal FakeGpioChip Contacts { get; }

    internal Site Site { get; }

    internal Readings Readings { get; }

    internal RelayCommands Commands { get; }

    internal SensorId LowFloat => Site.SensorNamed("north/reservoir low float");

    internal LoadId Pump => Site.LoadNamed("north/pump");

    internal GpioRackIo Open() => new(Site, label => chips[label].Open());

    /// <summary>Reads and writes once, as a scan does, and joins what failed.</summary>
    internal string? Scan(GpioRackIo io, int milliseconds)
    {
        var now = MonotonicTime.FromMilliseconds(milliseconds);
        var read = io.Read(now, Readings);
        var write = io.Write(now, Commands);
        return read.Fault ?? write.Fault;
    }

    internal static PinValue Level(bool high) => high ? PinValue.High : PinValue.Low;

    private FakeGpioChip Chip(string label) => chips[label] = new FakeGpioChip(label) { Log = Log };
}
