using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests;

public sealed class RelayLevelTests
{
    [Theory]
    [InlineData(SwitchState.On, RelayContact.NormallyOpen, false, true)]
    [InlineData(SwitchState.Off, RelayContact.NormallyOpen, false, false)]
    [InlineData(SwitchState.On, RelayContact.NormallyOpen, true, false)]
    [InlineData(SwitchState.Off, RelayContact.NormallyOpen, true, true)]
    [InlineData(SwitchState.On, RelayContact.NormallyClosed, false, false)]
    [InlineData(SwitchState.Off, RelayContact.NormallyClosed, false, true)]
    [InlineData(SwitchState.On, RelayContact.NormallyClosed, true, true)]
    [InlineData(SwitchState.Off, RelayContact.NormallyClosed, true, false)]
    public void PolarityAndContactTogetherGiveTheLevel(SwitchState state, RelayContact contact, bool activeLow, bool high)
    {
        var site = Sites.OneRack();
        var load = site.Loads[0] with { Contact = contact };
        var relay = new RelayOutput(load, new RelayLine(load.Id, new GpioLine("relays", 0), activeLow));

        Assert.Equal(Boards.Level(high), relay.LevelBy(new RelayCommands(site) { [load.Id] = state }));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void TheSafeStateOfEveryLoadIsTheCoilAtRest(bool activeLow)
    {
        // So that a controller without power leaves every load as its safe state asks.
        var site = Sites.OneRack();
        foreach (var load in site.Loads)
        {
            var relay = new RelayOutput(load, new RelayLine(load.Id, new GpioLine("relays", 0), activeLow));
            Assert.Equal(Boards.Level(high: activeLow), relay.LevelBy(new RelayCommands(site)));
        }
    }

    [Fact]
    public void ARelayThatIsNotTheOneNamedKeepsItsLevel()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Commands[boards.Pump] = SwitchState.On;
        Assert.Null(boards.Scan(io, 0));
        boards.Log.Clear();

        boards.Commands[boards.Pump] = SwitchState.Off;
        Assert.True(io.Write(MonotonicTime.Zero + Duration.FromMilliseconds(100), boards.Commands).IsOk);

        Assert.Equal(["relays: write 0 High"], boards.Log);
    }

    [Fact]
    public void EveryRelayIsWrittenBeforeAnyIsReadBack()
    {
        var boards = new Boards();
        using var io = boards.Open();
        foreach (var load in boards.Site.Loads)
        {
            boards.Commands[load.Id] = boards.Commands.IsOn(load.Id) ? SwitchState.Off : SwitchState.On;
        }

        boards.Log.Clear();
        int? writtenAtFirstReading = null;
        boards.Relays.Reading = () => writtenAtFirstReading ??= boards.Log.Count;
        Assert.True(io.Write(MonotonicTime.Zero, boards.Commands).IsOk);

        Assert.Equal(boards.Site.Loads.Length, writtenAtFirstReading);
    }
}
