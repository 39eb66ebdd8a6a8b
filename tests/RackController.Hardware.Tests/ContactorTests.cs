using System.Device.Gpio;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests;

public sealed class ContactorTests
{
    private static readonly Site site = Sites.OneRack().WithContactor();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ACoilAtRestLeavesTheCircuitClosedWhateverItsPolarity(bool activeLow)
    {
        var chip = new FakeGpioChip("relays") { Log = [] };
        var plan = new ContactorLine(new CircuitId(0), new GpioLine("relays", 9), activeLow);
        using var io = new GpioRackIo(site with { Io = new GpioIo([], []) { Contactors = [plan] } }, _ => chip.Open());
        Assert.Equal(Boards.Level(high: activeLow), chip.LevelOf(9));

        var commands = new RelayCommands(site);
        commands.SetCut(new CircuitId(0), isCut: true);
        Assert.True(io.Write(MonotonicTime.Zero, commands).IsOk);
        Assert.Equal(Boards.Level(high: !activeLow), chip.LevelOf(9));

        Assert.True(io.MakeSafe().IsOk);
        Assert.Equal(Boards.Level(high: activeLow), chip.LevelOf(9));
    }

    [Fact]
    public void AnOpenContactorStaysOpenWhileItsChipIsClaimedAgainForAnotherLine()
    {
        var chip = new FakeGpioChip("relays") { Log = [] };
        var plan = new ContactorLine(new CircuitId(0), new GpioLine("relays", 9), ActiveLow: true);
        var relays = site.Loads.Select(load => new RelayLine(load.Id, new GpioLine("relays", load.Id.Index), ActiveLow: true));
        using var io = new GpioRackIo(site with { Io = new GpioIo([.. relays], []) { Contactors = [plan] } }, _ => chip.Open());
        var (commands, readings) = (new RelayCommands(site), new Readings(site));
        commands.SetCut(new CircuitId(0), isCut: true);
        Assert.True(io.Write(MonotonicTime.Zero, commands).IsOk);

        chip.Fail(GpioCall.Write, line: 0);
        commands[new LoadId(0)] = commands.IsOn(new LoadId(0)) ? SwitchState.Off : SwitchState.On;
        chip.Log.Clear();
        for (var time = 0; time < 20_000; time += 100)
        {
            var now = MonotonicTime.FromMilliseconds(time);
            io.Read(now, readings);
            Assert.Equal(PinValue.Low, chip.LevelOf(9));
            Assert.False(io.Write(now, commands).IsOk);
        }

        Assert.Contains("relays: claim 9 Output Low", chip.Log);
    }

    [Fact]
    public void TheLogSaysHowItIsWired()
    {
        var plan = new ContactorLine(new CircuitId(0), new GpioLine("relays", 9), ActiveLow: true);
        using var io = new GpioRackIo(
            site with { Io = new GpioIo([], []) { Contactors = [plan] } }, _ => new FakeGpioChip("relays") { Log = [] }.Open());
        Assert.Equal(
            [
                "sockets/contactor: relay on line 9 of chip 'relays', coil on a low level, circuit closed while the coil rests, "
                + "safe level high",
            ],
            io.Describe());
    }
}
