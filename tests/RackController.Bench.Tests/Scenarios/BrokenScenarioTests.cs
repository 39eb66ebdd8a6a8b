using RackController.Bench.Tests.Support;

namespace RackController.Bench.Tests.Scenarios;

/// <summary>Each kind of expectation can fail, at the right moment and with what led there.</summary>
public sealed class BrokenScenarioTests
{
    private const string Morning = "start: 2026-03-02 06:30\nlength: 2 h\n";

    [Fact]
    public void AlwaysFailsAtTheMomentThatItIsNotSo()
    {
        var failure = Failure("  - that: the pump rests all morning\n    always: { load: north/pump, is: off }\n");
        Assert.Equal("north/pump is told to be on", failure.Seen);
        Assert.Equal(30, failure.Elapsed.TotalMinutes);
        Assert.Contains(failure.Causes, cause => cause is { Subject: "north/pump", What: "on" });
        Assert.Contains(failure.Causes, cause => cause is { Subject: "north", What: "due", Because: "the schedule floods at 07:00" });
    }

    [Fact]
    public void NeverFailsAtTheMomentThatItIsSo()
    {
        var failure = Failure("  - that: the top tray stays dry\n    never: { tier: north/tier 4, depth: above 10 mm }\n");
        Assert.InRange(failure.Elapsed.TotalMinutes, 30, 35);
        Assert.Contains(failure.Causes, cause => cause is { Subject: "north", What: "filling" });
    }

    [Fact]
    public void WithinFailsWhenTheTimeIsUp()
    {
        var failure = Failure(
            "  - that: a fill is over in a minute\n    within: 1 min\n    of: { rack: north, flood: filling }\n"
            + "    then: { rack: north, flood: soaking }\n");
        Assert.StartsWith("1 min after the moment that the flood of north is filling", failure.Seen, StringComparison.Ordinal);
        Assert.Equal(31, failure.Elapsed.TotalMinutes, 1);
    }

    [Fact]
    public void AStatementAboutDaysFailsAtMidnight()
    {
        var result = Scenes.Run(
            "start: 2026-03-02 00:00\nlength: 25 h\nexpect:\n  - that: there are four floods\n"
            + "    always: { rack: north, floods: exactly 4 }\n");
        var failure = Assert.Single(result.Verdicts).Failure!;
        Assert.Equal("the number of floods of north in a day is 3", failure.Seen);
        Assert.Equal(24, failure.Elapsed.TotalHours);
    }

    [Fact]
    public void AHazardThatNobodyAcceptedFailsTheRun()
    {
        var result = Scenes.Run(
            Morning + "events:\n  - at: 5 min\n    fault: reservoir-refilled\n    rack: north\n    size: 200 L\n"
            + "expect:\n  - that: the light shines\n    always: { load: north/tier 1 light, is: on }\n    from: 5 min\n");
        Assert.True(Assert.Single(result.Verdicts).IsMet);
        Assert.Contains(result.Hazards, hazard => hazard.Kind == HazardKind.WaterOnTheFloor);
        Assert.False(result.Passed);
    }

    [Fact]
    public void WhatTheDripTrayHoldsIsNoHazard()
    {
        var result = Scenes.Run(
            Morning + "events:\n  - at: 5 min\n    name: too much\n    fault: reservoir-refilled\n    rack: north\n    size: 70 L\n"
            + "expect:\n  - that: the drip tray is noticed\n    within: 10 s\n    of: { happens: too much }\n"
            + "    then: { alarm: north/high-water, is: active }\n");
        Assert.True(Assert.Single(result.Verdicts).IsMet);
        Assert.Empty(result.Hazards);
    }

    [Fact]
    public void AFaultIsFeltByTheRackAndNamedAmongTheCauses()
    {
        var result = Scenes.Run(
            Morning + "events:\n  - at: 20 min\n    name: the breaker trips\n    fault: breaker-trip\n    circuit: cellar sockets\n"
            + "expect:\n  - that: the light shines\n    always: { load: north/tier 1 light, powered: yes }\n    from: 5 min\n");
        var failure = Assert.Single(result.Verdicts).Failure!;
        Assert.Equal(20, failure.Elapsed.TotalMinutes, 2);
        Assert.Contains(failure.Causes, cause => cause.Kind is null && cause.Subject == "the breaker trips");
    }

    [Fact]
    public void AFloodThatWaitsForItsSupplyNamesTheLossOfTheSupply()
    {
        var result = Scenes.Run(
            Morning + "events:\n  - at: 20 min\n    name: the breaker trips\n    fault: breaker-trip\n    circuit: cellar sockets\n"
            + "expect:\n  - that: the flood comes all the same\n    within: 15 min\n    of: { happens: the breaker trips }\n"
            + "    then: { rack: north, flood: filling }\n");
        var failure = Assert.Single(result.Verdicts).Failure!;
        Assert.EndsWith("the flood of north is waiting", failure.Seen, StringComparison.Ordinal);
        Assert.Contains(failure.Causes, cause => cause.Subject == "cellar sockets/supply-lost");
    }

    private static Failure Failure(string expectation)
    {
        var result = Scenes.Run(Morning + "expect:\n" + expectation);
        Assert.False(result.Passed);
        return Assert.Single(result.Verdicts).Failure!;
    }
}
