using RackController.Model;

namespace RackController.Service.Tests;

public sealed class ScanThreadTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly ScanRig rig = new();
    private readonly TaskCompletionSource<ScanEnding> ended = new();

    [Fact]
    public async Task TheLastThingThatIsWrittenIsTheSafeState()
    {
        var thread = Thread();
        thread.Start();
        SpinWait.SpinUntil(() => rig.GoodScans > 100, Patience);

        Assert.True(thread.Stop(Patience));

        Assert.True(rig.Rack.IsSafe);
        Assert.Equal(new ScanEnding(null, null), await ended.Task);
        Assert.Equal(1, rig.Clock.Wakes);
    }

    [Fact]
    public async Task ADefectEndsTheScanWithTheSafeStateAsItsLastWord()
    {
        rig.Run(NodaTime.Duration.FromMinutes(2));
        Assert.False(rig.Rack.IsSafe);
        var defect = new InvariantBrokenException("a forbidden load is off");
        rig.Rack.ReadThrows = defect;

        Thread().Start();
        var ending = await ended.Task.WaitAsync(Patience);

        Assert.Same(defect, ending.Defect);
        Assert.Null(ending.SafeStateFault);
        Assert.True(rig.Rack.IsSafe);
    }

    [Fact]
    public async Task AClockThatFailsEndsTheScanWithEveryLoadSafe()
    {
        rig.Run(NodaTime.Duration.FromMinutes(2));
        Assert.False(rig.Rack.IsSafe);
        rig.Clock.Broken = new InvariantBrokenException("the kernel has no clock");

        Thread().Start();
        var ending = await ended.Task.WaitAsync(Patience);

        Assert.Same(rig.Clock.Broken, ending.Defect);
        Assert.Null(ending.SafeStateFault);
        Assert.True(rig.Rack.IsSafe);
    }

    [Fact]
    public async Task ASafeStateThatWasNotTakenIsSaid()
    {
        rig.Rack.ReadThrows = new InvariantBrokenException("whatever");
        rig.Rack.WriteOutcome = new IoOutcome("the relay board is gone");

        Thread().Start();
        var ending = await ended.Task.WaitAsync(Patience);

        Assert.Equal("the relay board is gone", ending.SafeStateFault);
        Assert.Equal(2, rig.Rack.WriteCount);
    }

    [Fact]
    public async Task ASafeStateThatWasWrittenAndNotSeenIsSaid()
    {
        rig.Rack.ReadThrows = new InvariantBrokenException("whatever");
        rig.Rack.SettleFault = "the bus hangs";

        Thread().Start();
        var ending = await ended.Task.WaitAsync(Patience);

        Assert.Equal("the bus hangs", ending.SafeStateFault);
    }

    public void Dispose() => rig.Dispose();

    private ScanThread Thread() => new(rig.Site, rig.Rack, rig.Clock, rig.Loop, ended.SetResult);
}
