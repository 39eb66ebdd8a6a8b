using System.Collections.Immutable;
using CsCheck;
using RackController.Growing;

namespace RackController.Planning.Tests;

public sealed class PlannerTests
{
    private static readonly Effort effort = new(5);

    [Fact]
    public void NoJudgeFindsAFaultInARandomPlan() => SmallRequests.Of(8, 4).Sample(
        request => Assert.Empty(Faults(request)), iter: 60, threads: 1);

    // The brute force of these tests: whatever the solver proves, trying everything comes to the same.
    [Fact]
    public void TryingEverythingFindsNoPlanThatLightsFewerTiers() => SmallRequests.Of(3, 2).Sample(request =>
    {
        var plan = Make(request);
        Assert.Equal(plan.Quality.LitTierDays, plan.Quality.LeastLitTierDays);
        Assert.Equal(Fewest(request, plan.Shortfalls.Select(one => one.Order)), plan.Quality.LitTierDays);
    }, iter: 60, threads: 1);

    [Fact]
    public void TryingEverythingMeetsNoMoreOrders() => SmallRequests.Of(3, 2).Sample(request =>
    {
        var plan = Make(request);
        var missed = plan.Shortfalls.Select(one => one.Order).ToList();
        foreach (var order in missed)
        {
            Assert.Null(Fewest(request, missed.Where(other => other != order)));
        }
    }, iter: 60, threads: 1);

    // A grower who did what the plan said comes back three days later, and nothing that grows is lost.
    [Fact]
    public void APlanThatIsRenewedTakesUpWhatGrows() => SmallRequests.Of(6, 4).Sample(request =>
    {
        var later = GrowingTrays.Later(Make(request), days: 3);
        if (Planner.Make(later, effort, _ => { }) is { } renewed)
        {
            Assert.Empty(new PlanJudge(renewed).Faults());
        }
    }, iter: 40, threads: 1);

    // Two trays and two more fit on one tier of four, so one tier is cleared on the first day, and somebody is told to carry.
    [Fact]
    public void WhatIsMovedOnTheFirstDayIsATaskOfThatDay()
    {
        var plan = Make(GrowingTrays.On(("north/tier 1", 2), ("north/tier 2", 2)));
        Assert.Empty(new PlanJudge(plan).Faults());
        var move = PlanTasks.Of(plan).Single(task => task.Kind == PlanTaskKind.Move);
        Assert.Equal(plan.Request.Today, move.Date);
        Assert.StartsWith("move 2 trays of radish", move.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatFillsItsTierStaysWhereItStands()
    {
        var plan = Make(GrowingTrays.On(("north/tier 2", 4)));
        Assert.Empty(new PlanJudge(plan).Faults());
        Assert.DoesNotContain(PlanTasks.Of(plan), task => task.Kind == PlanTaskKind.Move);
        Assert.Equal("north/tier 2", plan.Request.Space.Tiers[Assert.Single(plan.Batches[0].Stays).Tier].Name);
    }

    // No orders file can say so; whoever calls the planner can.
    [Fact]
    public void TraysThatCannotStandWhereTheyAreSaidToStandStandSomewhere() =>
        Assert.Empty(new PlanJudge(Make(GrowingTrays.On(("north/tier 1", 4), ("north/tier 1", 4)))).Faults());

    [Fact]
    public void WhatLacksRoomIsMetOnceTheRoomThatIsNamedIsThere() => SmallRequests.Of(8, 1).Sample(request =>
    {
        var plan = Make(request);
        if (plan.Remedy.IsEmpty)
        {
            return;
        }

        var more = plan.Remedy.Where(room => !room.IsDark).Sum(room => room.Count);
        var kind = request.Space.Tiers[0].Kind;
        var roomier = request with
        {
            Space = new GrowSpace(
                [.. request.Space.Tiers, .. Enumerable.Range(2, more).Select(number => new GrowTier("north", number, kind, 16))],
                request.Space.DarkTrays + plan.Remedy.Where(room => room.IsDark).Sum(room => room.Count)),
        };
        Assert.Empty(Make(roomier).Remedy);
    }, iter: 40, threads: 1);

    [Fact]
    public void TheSameRequestGivesTheSamePlan() => SmallRequests.Of(8, 4).Sample(request =>
    {
        var (one, other) = (Make(request), Make(request));
        Assert.Equal(Days(one), Days(other));
    }, iter: 10, threads: 1);

    private static Plan Make(PlanRequest request) => Planner.Make(request, effort, _ => { })!;

    private static IReadOnlyList<string> Faults(PlanRequest request) => new PlanJudge(Make(request)).Faults();

    private static string Days(Plan plan) => string.Join('\n', PlanTasks.Of(plan));

    private static int? Fewest(PlanRequest request, IEnumerable<Order> without)
    {
        var batches = Batching.Of(request.Orders.Except(without), [], request.MarginPercent)
            .Select(batch => (batch, BatchTimings.Of(batch, request.Work, request.Today)))
            .ToImmutableArray();
        return batches.IsEmpty ? 0 : new BruteForce(request.Space, batches).Fewest();
    }
}
