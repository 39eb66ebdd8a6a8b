using NodaTime;
using RackController.Growing;

namespace RackController.PlanFiles.Tests;

public sealed class PlanBatchesTests
{
    private static readonly Instant at = Instant.FromUtc(2026, 3, 2, 8, 0);

    [Fact]
    public void WhatAPlanHandsOverComesIntoTheBookWithItsCourseAndItsNeeds()
    {
        var plan = Orders.Plan();
        var planned = plan.Batches[0];

        var start = Assert.IsType<BatchTakenUp>(Assert.Single(Read(PlanJson.Of(plan, Orders.Forecast(plan))).Entries));

        Assert.Equal(("PEA-1", "pea", planned.Batch.Trays, "Lantern cafe"), (start.Lot, start.Crop, start.Trays, start.For));
        Assert.Equal((planned.Timing.Sow, planned.Timing.Harvest), (start.Sow, start.Harvest));
        Assert.Equivalent(planned.Batch.Crop.LitStages, start.Stages);
        var step = Assert.Single(start.Course);
        Assert.Equal(planned.Timing.Lit, step.Day);
        Assert.Equal([new StandsOn(plan.Request.Space.Tiers[0].Name, planned.Batch.Trays)], step.Places.AsEnumerable());
    }

    [Fact]
    public void TraysThatAreCarriedAreAStepOfTheirOwn()
    {
        var plan = Orders.Plan();
        var planned = plan.Batches[0];
        var (lit, later) = (planned.Timing.Lit, planned.Timing.Lit.PlusDays(2));
        var moved = plan with
        {
            Batches =
            [
                planned with
                {
                    Stays =
                    [
                        new Stay(0, planned.Batch.Trays, lit, later), new Stay(1, planned.Batch.Trays, later, planned.Timing.Harvest),
                    ],
                },
            ],
        };

        var start = Assert.IsType<BatchTakenUp>(Assert.Single(Read(PlanJson.Of(moved, Orders.Forecast(moved))).Entries));

        Assert.Equal([lit, later], start.Course.Select(step => step.Day));
        Assert.Equal(plan.Request.Space.Tiers[1].Name, start.Course[1].Places[0].Tier);
    }

    [Fact]
    public void WhatGrowsAlreadyIsPutDownAsSownAndAsMovedWhereItHadBeen()
    {
        var plan = Orders.Plan();
        var planned = plan.Batches[0];
        var growing = plan with
        {
            Batches =
            [
                planned with { Batch = planned.Batch with { UnderWay = new UnderWay(planned.Timing.Sow, planned.Timing.Lit, null, 1) } },
            ],
        };

        var entries = Read(PlanJson.Of(growing, Orders.Forecast(growing)), planned.Timing.Lit.PlusDays(1)).Entries;

        Assert.Equal([typeof(BatchTakenUp), typeof(BatchSown), typeof(BatchMoved)], entries.Select(entry => entry.GetType()));
        Assert.Equal(2, Read(PlanJson.Of(growing, Orders.Forecast(growing)), planned.Timing.Sow).Entries.Length);
    }

    // The plan knows of its own days only: what was lit before is there from its first day on.
    [Fact]
    public void WhatWasLitBeforeThePlanBeganIsPutDownOnTheDayOnWhichItWas()
    {
        var plan = Orders.Plan();
        var planned = plan.Batches[0];
        var (lit, begins) = (planned.Timing.Lit, planned.Timing.Lit.PlusDays(2));
        var growing = planned with
        {
            Batch = planned.Batch with { UnderWay = new UnderWay(planned.Timing.Sow, lit, null, 1) },
            Stays = [new Stay(0, planned.Batch.Trays, begins, planned.Timing.Harvest)],
        };

        var entries = Read(PlanJson.Of(plan with { Batches = [growing] }, Orders.Forecast(plan)), begins).Entries;

        Assert.Equal(lit, Assert.Single(Assert.IsType<BatchTakenUp>(entries[0]).Course).Day);
        Assert.Equal(lit, Assert.IsType<BatchMoved>(entries[2]).Day);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("no plan")]
    [InlineData("{\"batches\": null}")]
    public void WhatIsNoPlanIsRefusedInASentence(string json) =>
        Assert.StartsWith("This is no plan", Read(json).Complaint, StringComparison.Ordinal);

    [Fact]
    public void TraysOfOneBatchOnTwoTiersAreOneBatchInTheBook()
    {
        var plan = Orders.Plan();
        var planned = plan.Batches[0];
        var known = planned.Batch with { UnderWay = new UnderWay(planned.Timing.Sow, planned.Timing.Lit, null, 1) { Lot = "PEA-1" } };
        var (lit, harvest) = (planned.Timing.Lit, planned.Timing.Harvest);
        var two = plan with
        {
            Batches =
            [
                planned with { Batch = known with { Trays = 3 }, Stays = [new Stay(0, 3, lit, harvest)] },
                planned with { Batch = known with { Trays = 1 }, Stays = [new Stay(1, 1, lit, harvest)] },
            ],
        };

        var start = Assert.Single(Read(PlanJson.Of(two, Orders.Forecast(two))).Entries.OfType<BatchTakenUp>());

        Assert.Equal(4, start.Trays);
        Assert.Equal([3, 1], Assert.Single(start.Course).Places.Select(place => place.Trays));
    }

    [Theory]
    [InlineData("\"sow\": \"", "\"sow\": \"soon ")]
    [InlineData("\"media\": null", "\"media\": \"wool\"")]
    public void ABatchThatIsNotWholeIsRefusedByItsLot(string old, string replacement)
    {
        var json = PlanJson.Of(Orders.Plan(), Orders.Forecast(Orders.Plan())).Replace(old, replacement, StringComparison.Ordinal);
        Assert.Equal("The batch PEA-1 of the plan is not whole: make the plan again.", Read(json).Complaint);
    }

    [Fact]
    public void NumbersThatFitNowhereAreRefused()
    {
        var plan = Orders.Plan();
        var stages = plan.Batches[0].Batch.Crop.LitStages;
        var days = $"\"most\": {stages[0].Days.Most}";
        var json = PlanJson.Of(plan, Orders.Forecast(plan));

        Assert.Contains(days, json, StringComparison.Ordinal);
        Assert.NotNull(Read(json.Replace(days, "\"most\": 1e300", StringComparison.Ordinal)).Complaint);
    }

    private static PlanBatchesReading Read(string json, LocalDate? today = null) =>
        PlanBatches.Read(json, at, "Ada", today ?? Orders.Today);
}
