using System.Device.Gpio;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests;

public sealed class ClaimAndReleaseTests
{
    [Theory]
    [InlineData(false, "Low")]
    [InlineData(true, "High")]
    public void EveryRelayIsClaimedAtRestBeforeAnythingElseHappens(bool activeLow, string rest)
    {
        var boards = new Boards(activeLow);
        using var io = boards.Open();

        var relays = boards.Site.Loads.Select(load => $"relays: claim {load.Id.Index} Output {rest}");
        Assert.Equal(relays, boards.Log.Take(boards.Site.Loads.Length));
    }

    [Fact]
    public void OpeningWritesNothing()
    {
        var boards = new Boards();
        using var io = boards.Open();

        Assert.DoesNotContain(boards.Log, entry => entry.Contains("write", StringComparison.Ordinal));
    }

    [Fact]
    public void ContactsAreClaimedWithTheirPull()
    {
        var boards = new Boards();
        using var io = boards.Open();

        Assert.Contains($"contacts: claim {Boards.LowFloatLine} InputPullUp", boards.Log);
    }

    [Fact]
    public void EveryRelayIsDrivenSafeBeforeTheFirstLineIsLetGo()
    {
        var boards = new Boards();
        var io = boards.Open();
        foreach (var load in boards.Site.Loads)
        {
            boards.Commands[load.Id] = load.SafeState == SwitchState.On ? SwitchState.Off : SwitchState.On;
        }

        Assert.Null(boards.Scan(io, 0));
        boards.Log.Clear();
        io.Dispose();

        var writes = boards.Site.Loads.Select(load => $"relays: write {load.Id.Index} High");
        Assert.Equal(writes, boards.Log.Take(boards.Site.Loads.Length));
        Assert.All(boards.Log.Skip(boards.Site.Loads.Length), entry => Assert.Contains("release", entry, StringComparison.Ordinal));
        Assert.Equal(boards.Site.Loads.Length + boards.Site.Sensors.Length, boards.Log.Count - boards.Site.Loads.Length);
    }

    [Fact]
    public void MakingSafeKeepsTheLines()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Commands[boards.Pump] = SwitchState.On;
        Assert.Null(boards.Scan(io, 0));

        Assert.True(io.MakeSafe().IsOk);

        Assert.Equal(PinValue.High, boards.Relays.LevelOf(Boards.PumpLine));
        Assert.DoesNotContain(boards.Log, entry => entry.Contains("release", StringComparison.Ordinal));
    }

    [Fact]
    public void MakingSafeSaysWhichRelayDidNotFollow()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Relays.Stick(Boards.PumpLine, PinValue.Low);

        Assert.Contains("north/pump", io.MakeSafe().Fault, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("relays", 4)]
    [InlineData("contacts", Boards.LowFloatLine + 1)]
    public void AfterAFailedClaimNothingStaysHeld(string chip, int line)
    {
        var boards = new Boards();
        (chip == "relays" ? boards.Relays : boards.Contacts).Fail(GpioCall.Claim, line);

        var refusal = Assert.Throws<IOException>(() => boards.Open());

        Assert.Contains($"line {line}", refusal.Message, StringComparison.Ordinal);
        var claims = boards.Log.Count(entry => entry.Contains("claim", StringComparison.Ordinal));
        Assert.Equal(claims, boards.Log.Count(entry => entry.Contains("release", StringComparison.Ordinal)));
    }

    [Fact]
    public void ASimulatedSiteHasNoLines()
    {
        Assert.Throws<ArgumentException>(() => GpioRackIo.OpenLines(Sites.OneRack(), () => MonotonicTime.Zero));
    }

    [Fact]
    public void EveryLineIsDescribedForTheLog()
    {
        var boards = new Boards();
        using var io = boards.Open();

        var lines = io.Describe().ToList();

        Assert.Equal(boards.Site.Loads.Length + boards.Site.Sensors.Length, lines.Count);
        Assert.Contains("north/pump: relay on line 0 of chip 'relays', coil on a low level, load through the normally-open contact, "
            + "safe level high", lines);
        Assert.Contains("north/reservoir low float: contact on line 16 of chip 'contacts', high means 1, pull up", lines);
    }
}
