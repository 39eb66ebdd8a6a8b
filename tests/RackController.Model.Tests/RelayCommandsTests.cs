using RackController.Testing;

namespace RackController.Model.Tests;

public class RelayCommandsTests
{
    private static readonly Site Site = Sites.OneRack();

    [Fact]
    public void BeforeAnythingIsCommandedEveryLoadIsInItsSafeState()
    {
        var commands = new RelayCommands(Site);
        Assert.All(Site.Loads, load => Assert.Equal(load.SafeState, commands[load.Id]));
        Assert.Contains(Site.Loads, load => load.SafeState == SwitchState.On);
        Assert.Contains(Site.Loads, load => load.SafeState == SwitchState.Off);
    }

    [Fact]
    public void AContactorIsClosedUntilItIsToldToCut()
    {
        var circuit = Site.Circuits[0].Id;
        var commands = new RelayCommands(Site);
        Assert.False(commands.IsCut(circuit));
        commands.SetCut(circuit, isCut: true);
        var copy = new RelayCommands(Site);
        copy.CopyFrom(commands);
        Assert.True(copy.IsCut(circuit));
    }

    [Fact]
    public void ACopyKeepsWhatItWasGivenWhenTheOriginalGoesOn()
    {
        var pump = Site.Racks[0].Pump.Load;
        var original = new RelayCommands(Site) { [pump] = SwitchState.On };
        var copy = new RelayCommands(Site);
        copy.CopyFrom(original);
        original[pump] = SwitchState.Off;

        Assert.True(copy.IsOn(pump));
        Assert.False(original.IsOn(pump));
    }
}
