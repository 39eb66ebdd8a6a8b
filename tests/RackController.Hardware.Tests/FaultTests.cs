using System.Device.Gpio;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests;

public sealed class FaultTests
{
    [Fact]
    public void AHealthyBoardHasNoFault()
    {
        var boards = new Boards();
        using var io = boards.Open();

        Assert.Null(boards.Scan(io, 0));
        Assert.Null(boards.Scan(io, 100));
    }

    [Fact]
    public void OneRelayThatCannotBeWrittenDoesNotKeepTheOthersFromTheirCommand()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Relays.Fail(GpioCall.Write, Boards.PumpLine);
        boards.Commands[boards.Pump] = SwitchState.On;
        boards.Commands[boards.Site.LoadNamed("north/tier 2 light")] = SwitchState.On;

        Assert.Contains("north/pump", boards.Scan(io, 0), StringComparison.Ordinal);

        Assert.Equal(PinValue.Low, boards.Relays.LevelOf(5));
    }

    [Fact]
    public void ALineThatDoesNotFollowIsAFaultAndIsWrittenAgainUntilItDoes()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Commands[boards.Pump] = SwitchState.On;
        boards.Relays.Stick(Boards.PumpLine, PinValue.High);

        Assert.Contains("does not follow", boards.Scan(io, 0), StringComparison.Ordinal);
        boards.Log.Clear();
        Assert.NotNull(boards.Scan(io, 100));
        Assert.Contains("relays: write 0 Low", boards.Log);

        boards.Relays.Unstick(Boards.PumpLine);
        Assert.Null(boards.Scan(io, 200));
    }

    [Fact]
    public void ALineThatChangesByItselfLaterIsAFaultToo()
    {
        var boards = new Boards();
        using var io = boards.Open();
        Assert.Null(boards.Scan(io, 0));

        boards.Relays.Stick(Boards.PumpLine, PinValue.Low);

        Assert.Contains("north/pump", boards.Scan(io, 100), StringComparison.Ordinal);
    }

    [Fact]
    public void ALineThatDoesNotFollowNeverLetsTheOthersGo()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Relays.Stick(Boards.PumpLine, PinValue.Low);
        boards.Log.Clear();

        for (var time = 0; time < 20_000; time += 100)
        {
            Assert.NotNull(boards.Scan(io, time));
        }

        Assert.DoesNotContain(boards.Log, entry => entry.Contains("release", StringComparison.Ordinal));
    }

    [Fact]
    public void ALostChipOfContactsMakesThemCorruptWhileTheRelaysStillObey()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Contacts.IsGone = true;
        boards.Commands[boards.Pump] = SwitchState.On;

        Assert.Contains("north/reservoir low float", boards.Scan(io, 0), StringComparison.Ordinal);

        Assert.All(boards.Site.Sensors, sensor => Assert.Equal(ReadingQuality.Corrupt, boards.Readings[sensor.Id].Quality));
        Assert.Equal(PinValue.Low, boards.Relays.LevelOf(Boards.PumpLine));
    }

    [Fact]
    public void BothChipsLostAreBothNamed()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Contacts.IsGone = true;
        boards.Relays.IsGone = true;
        boards.Commands[boards.Pump] = SwitchState.On;

        var now = MonotonicTime.FromMilliseconds(0);
        Assert.Contains("'contacts'", io.Read(now, boards.Readings).Fault, StringComparison.Ordinal);
        Assert.Contains("'relays'", io.Write(now, boards.Commands).Fault, StringComparison.Ordinal);
    }

    [Fact]
    public void AChipThatComesBackIsClaimedAgainAtItsSafeLevels()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Commands[boards.Pump] = SwitchState.On;
        Assert.Null(boards.Scan(io, 0));
        boards.Relays.IsGone = true;
        boards.Commands[boards.Pump] = SwitchState.Off;
        Assert.NotNull(boards.Scan(io, 100));
        boards.Relays.IsGone = false;
        boards.Relays.Fail(GpioCall.Write);
        boards.Log.Clear();

        Assert.NotNull(boards.Scan(io, 1_000));
        Assert.DoesNotContain("relays: claim 0 Output High", boards.Log);
        boards.Relays.Mend();
        Assert.Null(boards.Scan(io, 1_100));
    }

    [Fact]
    public void AFaultThatLastsIsAnsweredByANewClaimEverMoreRarely()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Contacts.Fail(GpioCall.Read);
        var claims = new List<int>();

        for (var time = 0; time <= 40_000; time += 100)
        {
            boards.Log.Clear();
            Assert.NotNull(boards.Scan(io, time));
            if (boards.Log.Any(entry => entry.StartsWith("contacts: claim", StringComparison.Ordinal)))
            {
                claims.Add(time);
            }
        }

        // After 1 s, then 2, 4, 8 and every 10 s.
        Assert.Equal([1_000, 3_000, 7_000, 15_000, 25_000, 35_000], claims);
    }

    [Fact]
    public void AContactThatCannotBeReadIsClaimedByItselfWhileTheRelaysOfItsChipObey()
    {
        var boards = new Boards(oneChip: true);
        using var io = boards.Open();
        boards.Commands[boards.Pump] = SwitchState.On;
        Assert.Null(boards.Scan(io, 0));
        boards.Relays.Fail(GpioCall.Read, Boards.LowFloatLine);
        boards.Log.Clear();

        for (var time = 100; time < 5_000; time += 100)
        {
            Assert.Contains("low float", boards.Scan(io, time), StringComparison.Ordinal);
        }

        Assert.Contains("relays: claim 16 InputPullUp", boards.Log);
        Assert.DoesNotContain(boards.Log, entry => entry.EndsWith(" 0", StringComparison.Ordinal));
        Assert.DoesNotContain(boards.Log, entry => entry.Contains(" 0 ", StringComparison.Ordinal));
        boards.Relays.Mend();
        Assert.Null(boards.Scan(io, 5_000));
    }

    [Fact]
    public void AContactThatCannotBeClaimedAgainStaysAFaultUntilItCan()
    {
        var boards = new Boards(oneChip: true);
        using var io = boards.Open();
        boards.Relays.Fail(GpioCall.Read, Boards.LowFloatLine);
        boards.Relays.Fail(GpioCall.Claim, Boards.LowFloatLine);
        for (var time = 0; time < 2_000; time += 100)
        {
            Assert.NotNull(boards.Scan(io, time));
        }

        boards.Relays.Mend();

        for (var time = 2_000; time < 10_000; time += 100)
        {
            boards.Scan(io, time);
        }

        Assert.Null(boards.Scan(io, 10_000));
        Assert.Equal(ReadingQuality.Good, boards.Readings[boards.LowFloat].Quality);
    }

    [Fact]
    public void AFaultThatEndedIsForgotten()
    {
        var boards = new Boards();
        using var io = boards.Open();
        boards.Contacts.Fail(GpioCall.Read);
        Assert.NotNull(boards.Scan(io, 0));
        boards.Contacts.Mend();
        Assert.Null(boards.Scan(io, 100));
        boards.Log.Clear();

        Assert.Null(boards.Scan(io, 5_000));

        Assert.Empty(boards.Log);
    }

    [Fact]
    public void ALostChipDoesNotKeepTheRackFromEnding()
    {
        var boards = new Boards();
        var io = boards.Open();
        boards.Contacts.IsGone = true;
        Assert.NotNull(boards.Scan(io, 0));
        Assert.NotNull(boards.Scan(io, 1_500));

        io.Dispose();

        Assert.Contains("relays: release 0", boards.Log);
    }
}
