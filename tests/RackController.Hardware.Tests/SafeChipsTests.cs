using RackController.Hardware.CharacterDevice;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests;

public sealed class SafeChipsTests
{
    private readonly List<string> log = [];
    private readonly Site site;

    public SafeChipsTests()
    {
        var rack = Sites.OneRack();
        site = rack with
        {
            Io = new GpioIo(
                [.. rack.Loads.Select(load => new RelayLine(
                    load.Id, new GpioLine(load.Id.Index == 0 ? "gone" : "there", load.Id.Index), ActiveLow: true))],
                [.. rack.Sensors.Select(sensor => new ContactLine(
                    sensor.Id, new GpioLine("floats", sensor.Id.Index), ActiveLow: false, LinePull.Up, NodaTime.Duration.Zero))]),
        };
    }

    [Fact]
    public void AChipThatIsGoneLeavesNoRelayOfAnotherOn()
    {
        var there = new FakeGpioChip("there") { Log = log };

        var faults = SafeChips.Drive(site, alone => new GpioRackIo(
            alone, label => label == "there" ? there.Open() : throw new IOException($"there is no chip '{label}'")));

        Assert.Equal(["there is no chip 'gone'"], faults);
        Assert.Equal(
            site.Loads.Skip(1).Select(load => $"there: write {load.Id.Index} High").ToHashSet(),
            log.Where(entry => entry.Contains("write", StringComparison.Ordinal)).ToHashSet());
    }

    [Fact]
    public void NothingIsTouchedWhereAnotherProcessDrivesTheRack()
    {
        var busy = new IOException("busy", LibC.Busy);
        var asked = 0;

        Assert.Throws<GpioUnavailableException>(() => SafeChips.Drive(site, _ =>
        {
            asked++;
            throw new GpioUnavailableException("line 0 of chip 'gone' is held by 'rackcontroller'", busy);
        }));
        Assert.Equal(1, asked);
    }
}
