using NodaTime;
using RackController.Bench.Tests.Support;
using RackController.Model;

namespace RackController.Bench.Tests.Expectations;

public sealed class JudgeTests
{
    private static readonly Window Whole = new(Duration.Zero, Duration.MaxValue);
    private readonly FakeObserved now = new();
    private readonly EventLog log = new();

    private LoadIsTold PumpIsOn => new(now.Pump, SwitchState.On);

    [Fact]
    public void AlwaysRemembersTheFirstMomentThatGoesAgainstIt()
    {
        var judge = Judge.For(new Always("the pump runs", 7, Whole, PumpIsOn, null));
        now.Told.Add(now.Pump);
        judge.Look(now, log);
        now.Told.Clear();
        judge.Look(now.After(5), log);
        judge.Look(now.After(5), log);

        var verdict = judge.Close(now);
        Assert.False(verdict.IsMet);
        Assert.Equal(Duration.FromSeconds(5), verdict.Failure!.Elapsed);
        Assert.Equal("north/pump is told to be off", verdict.Failure.Seen);
        Assert.Equal("always: north/pump is told to be on", verdict.Words);
    }

    [Fact]
    public void NeverIsMetUntilTheStatementIsTrueOnce()
    {
        var judge = Judge.For(new Never("the pump stays off", 7, Whole, PumpIsOn, null));
        judge.Look(now, log);
        Assert.True(judge.Close(now).IsMet);
        now.Told.Add(now.Pump);
        judge.Look(now.After(1), log);
        Assert.False(judge.Close(now).IsMet);
    }

    [Fact]
    public void OutsideItsWindowNothingCounts()
    {
        var window = new Window(Duration.FromSeconds(10), Duration.FromSeconds(20));
        var judge = Judge.For(new Never("the pump stays off", 7, window, PumpIsOn, null));
        now.Told.Add(now.Pump);
        judge.Look(now, log);
        now.Told.Clear();
        judge.Look(now.After(10), log);
        now.Told.Add(now.Pump);
        judge.Look(now.After(10), log);
        Assert.True(judge.Close(now).IsMet);
    }

    [Fact]
    public void TheBeginningOfAWindowIsAskedForWhateverHappensThere()
    {
        var window = new Window(Duration.FromSeconds(10), Duration.FromSeconds(20));
        Judge.For(new Never("the pump stays off", 7, window, PumpIsOn, null)).Look(now, log);
        Assert.Equal(window.From, now.AskedToLookBy);
    }

    [Fact]
    public void TheEndOfAnUnbrokenRunsTimeIsAskedForAndThenWhatFollows()
    {
        var run = new Measures(new UnbrokenRun(now.Pump), new Above(1));
        now.Powered.Add(now.Pump);
        _ = run.Judge(now);
        Assert.Equal(Duration.FromMinutes(1), now.AskedToLookBy);
        now.After(60).Unbroken = Duration.FromMinutes(1);
        Assert.Equal(Truth.No, run.Judge(now));
        Assert.Equal(now.Elapsed + Duration.Epsilon, now.AskedToLookBy);
    }

    [Fact]
    public void AnExpectationThatThereWasNothingToJudgeForIsNotMet()
    {
        var judge = Judge.For(new Never("the pump stays off while away", 7, Whole, PumpIsOn, new ControllerRuns(false)));
        judge.Look(now, log);

        var verdict = judge.Close(now);
        Assert.False(verdict.IsMet);
        Assert.Equal("it never came about that the controller is away, so nothing is proved", verdict.Failure!.Seen);
    }

    [Fact]
    public void WithinIsMetByAConsequenceAtTheLastMoment()
    {
        var judge = Within(seconds: 2);
        now.Happened = ["trip"];
        judge.Look(now, log);
        now.After(2).Told.Add(now.Pump);
        judge.Look(now, log);
        Assert.True(judge.Close(now).IsMet);
    }

    [Fact]
    public void WithinNamesTheDeadlineThatPassedAndWhatWasTheCaseThen()
    {
        var judge = Within(seconds: 2);
        now.Happened = ["trip"];
        judge.Look(now, log);
        now.After(30).Told.Add(now.Pump);
        judge.Look(now, log);

        var failure = judge.Close(now).Failure!;
        Assert.Equal(Duration.FromSeconds(2), failure.Elapsed);
        Assert.Equal(now.At - Duration.FromSeconds(28), failure.At);
        Assert.StartsWith("2 s after the moment that \"trip\" happens it had not come about", failure.Seen, StringComparison.Ordinal);
    }

    [Fact]
    public void WithinAsksForTheMomentAtWhichItsTimeIsUp()
    {
        var judge = Within(seconds: 60);
        now.Happened = ["trip"];
        judge.Look(now, log);
        Assert.Equal(Duration.FromSeconds(60) + Duration.Epsilon, now.AskedToLookBy);
    }

    [Fact]
    public void ARunThatEndsBeforeTheTimeIsUpProvesNothing()
    {
        var judge = Within(seconds: 60);
        now.Happened = ["trip"];
        judge.Look(now, log);
        Assert.False(judge.Close(now.After(1)).IsMet);
    }

    [Fact]
    public void TheCausesAreTheScenariosEventsAndThoseOfThePartsConcerned()
    {
        log.Begin(Duration.Zero, now.At);
        log.TakeScenario("the relay welds", "relay-welded north/pump");
        now.Report("north/low-float", "acts");
        log.Take(now.Events[0]);
        now.Report("north/fan", "off");
        log.Take(now.Events[0]);
        var judge = Judge.For(new Always("the pump runs", 7, Whole, PumpIsOn, null));
        judge.Look(now, log);

        var causes = judge.Close(now).Failure!.Causes;
        Assert.Equal(["the relay welds", "north/low-float"], causes.Select(cause => cause.Subject));
    }

    private Judge Within(double seconds) => Judge.For(
        new Within("in time", 7, Whole, Duration.FromSeconds(seconds), new Happens("trip"), PumpIsOn));
}
