using NodaTime;
using RackController.Bench.Tests.Support;
using RackController.Control;
using RackController.Testing;

namespace RackController.Bench.Tests.Expectations;

public sealed class RecoveryJudgeTests
{
    private static readonly Window whole = new(Duration.Zero, Duration.MaxValue);
    private readonly FakeObserved now = new() { Site = Sites.OneRack() };
    private readonly EventLog log = new();
    private readonly Judge judge = Judge.For(new Recovers("all is well", 7, whole, Duration.FromHours(2), new Happens("mended")));

    [Fact]
    public void AFloodThatBeganSinceAndHasDrainedIsEnough()
    {
        Mend();
        Flood();
        var verdict = judge.Close(now);
        Assert.True(verdict.IsMet);
        Assert.Equal(
            "within 2 h of the moment that \"mended\" happens: every tray was flooded anew and has drained, and no alarm stands",
            verdict.Words);
    }

    [Fact]
    public void AFloodThatBeganBeforeDoesNotCount()
    {
        At(FloodPhase.Filling, 0);
        Mend();
        At(FloodPhase.Filling, 60);
        At(FloodPhase.Idle, 0);
        Assert.Equal("2 h after \"mended\" happens: north did not flood again", SeenTooLate());
    }

    [Fact]
    public void AFloodThatIsNotOverDoesNotCountYet()
    {
        Mend();
        At(FloodPhase.Filling, 60);
        Assert.Equal("2 h after \"mended\" happens: north did not flood again", SeenTooLate());
    }

    [Fact]
    public void AnAlarmThatIsLeftIsLeftToDo()
    {
        now.Alarms[AlarmIs.Any] = AlarmState.Latched;
        Mend();
        Flood();
        Assert.Equal("2 h after \"mended\" happens: an alarm stands", SeenTooLate());
    }

    [Fact]
    public void AControllerThatIsAwayIsNotWell()
    {
        Mend();
        now.ControllerRuns = false;
        Flood();
        Assert.Equal("2 h after \"mended\" happens: the controller is away", SeenTooLate());
    }

    [Fact]
    public void BothMustBeSoAtTheSameMoment()
    {
        now.Alarms[AlarmIs.Any] = AlarmState.Acknowledged;
        Mend();
        Flood();
        now.Alarms.Clear();
        judge.Look(now.After(60), log);
        Assert.True(judge.Close(now).IsMet);
    }

    [Fact]
    public void WhatHappensAnewStartsTheTimeAnew()
    {
        Mend();
        judge.Look(now.After(7000), log);
        Mend();
        judge.Look(now.After(7000), log);
        Flood();
        Assert.True(judge.Close(now).IsMet);
    }

    [Fact]
    public void ARunThatEndsBeforeOrInWhichNothingHappensProvesNothing()
    {
        judge.Look(now, log);
        Assert.StartsWith("it never came about", judge.Close(now).Failure!.Seen, StringComparison.Ordinal);
        var other = Judge.For(new Recovers("all is well", 7, whole, Duration.FromHours(2), new Happens("mended")));
        now.Happened = ["mended"];
        other.Look(now, log);
        Assert.StartsWith("the run ended before", other.Close(now.After(1)).Failure!.Seen, StringComparison.Ordinal);
    }

    private void Mend()
    {
        now.After(1).Happened = ["mended"];
        judge.Look(now, log);
    }

    private void Flood()
    {
        At(FloodPhase.Filling, 60);
        At(FloodPhase.Draining, 20);
        At(FloodPhase.Idle, 0);
    }

    private void At(FloodPhase phase, double depthMm)
    {
        now.After(60).Phase = phase;
        now.DepthMm = depthMm;
        judge.Look(now, log);
    }

    private string SeenTooLate()
    {
        judge.Look(now.After(7200), log);
        return judge.Close(now).Failure!.Seen;
    }
}
