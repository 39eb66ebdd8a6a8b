using Microsoft.Playwright;
using NodaTime;
using RackController.Growing;
using RackController.Service;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>The growing book in a browser: begun, sown, moved, harvested, and drawn on its tier.</summary>
public sealed class BatchPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private const string Tier = "north/tier 2";

    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(
        howServed: page => page with { CropsFile = ShippedFiles.PathTo("config/crops.yaml") });

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task TheyHoldToTheGuidelinesOnEveryScreen(string view)
    {
        PutDown(Begun("RAD-1", "radish", 4), Sown("RAD-1"), Moved("RAD-1", 4), Begun("PEA-1", "pea", 2), Sown("PEA-1"));
        var page = await OpenAsync(View.Of(view), "/batches");
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"batches-{view}");

        foreach (var (address, name) in ((string, string)[])
            [
                ("/batches/one?lot=RAD-1", "batch"), ("/batches/move?lot=PEA-1", "batch-move"), ("/batches/new", "batch-new"),
                ("/batches/plan", "take-up"),
            ])
        {
            await page.GotoAsync(new Uri(served.Address, address).ToString());
            await Judgement.HoldsAsync(page);
            await Chromium.KeepAsync(page, $"{name}-{view}");
        }

        await page.GotoAsync(served.Address.ToString());
        await Assertions.Expect(page.Locator("svg.rack .grows")).ToHaveTextAsync("radish day 0");
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"now-with-batches-{view}");
    }

    [Fact]
    public async Task ItFitsAScreenOf320Pixels()
    {
        PutDown(Begun("RAD-1", "radish", 4), Sown("RAD-1"), Moved("RAD-1", 4));
        await Judgement.HoldsAsync(await OpenAsync(View.Phone with { Width = 320 }, "/batches"));
    }

    // By keyboard alone, from an empty book to the record of a harvest.
    [Fact]
    public async Task ABatchIsBegunSownMovedAndHarvested()
    {
        var page = await OpenAsync(View.Laptop, "/batches");
        await page.GetByRole(AriaRole.Link, new() { Name = "Begin a batch…" }).PressAsync("Enter");
        await page.GetByLabel("Crop").SelectOptionAsync("radish");
        await page.GetByLabel("Insert trays").FillAsync("3");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin it" }).PressAsync("Enter");

        await page.GetByRole(AriaRole.Link, new() { Name = "Sown…" }).PressAsync("Enter");
        await page.GetByLabel("Seed lot, as the bag names it").FillAsync("bag 17 <b>");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sown" }).PressAsync("Enter");

        await page.GetByRole(AriaRole.Link, new() { NameString = "RAD-" }).First.PressAsync("Enter");
        await page.GetByRole(AriaRole.Link, new() { Name = "Moved…" }).PressAsync("Enter");
        await page.GetByLabel($"Trays on {Tier}").FillAsync("2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Moved" }).PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("has 3 trays, and 2 of them are on tiers then");
        await page.GetByLabel($"Trays on {Tier}").FillAsync("3");
        await page.GetByRole(AriaRole.Button, new() { Name = "Moved" }).PressAsync("Enter");

        await page.GetByRole(AriaRole.Link, new() { NameString = "RAD-" }).First.PressAsync("Enter");
        await page.GetByRole(AriaRole.Link, new() { Name = "Harvested…" }).PressAsync("Enter");
        await page.GetByLabel("Weight in all, g").FillAsync("812.5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Harvested" }).PressAsync("Enter");

        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Gone" })).ToBeVisibleAsync();
        var csv = await served.Client.GetStringAsync("/batches.csv");
        Assert.Contains("sown,RAD-", csv, StringComparison.Ordinal);
        Assert.Contains("bag 17 <b>", csv, StringComparison.Ordinal);
        Assert.Contains(",812.5,", csv, StringComparison.Ordinal);
        await OnRecordAsync(" harvested on");
    }

    [Fact]
    public async Task ABagOfSeedIsTracedToAllThatWasSownOfIt()
    {
        PutDown(Begun("RAD-1", "radish", 4), Sown("RAD-1"), Begun("PEA-1", "pea", 2), Sown("PEA-1"), Begun("DIL-1", "dill", 1));
        var page = await OpenAsync(View.Phone, "/batches");

        await page.GetByLabel("Lot, seed lot, crop or customer").FillAsync("BAG 17");
        await page.GetByRole(AriaRole.Button, new() { Name = "Find" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "PEA-1", Exact = true })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "RAD-1", Exact = true })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "DIL-1", Exact = true })).ToHaveCountAsync(0);
        await Judgement.HoldsAsync(page);
    }

    [Fact]
    public async Task TheRecordOfABatchIsARowOfATable()
    {
        PutDown(
            Begun("RAD-1", "radish", 4), Sown("RAD-1"), Moved("RAD-1", 4), new UpkeepDone(Now, "Ben", "screen", "north", ""),
            new BatchHarvested(Now, "Ben", "RAD-1", Today, 4, 612.5, "=the inn"), new BatchNoted(Now, "Ada", "RAD-1", "even"));

        var rows = (await served.Client.GetStringAsync("/batches/records.csv")).Split("\r\n");

        Assert.StartsWith("lot,crop,for,trays,seed lot,sown,", rows[0], StringComparison.Ordinal);
        Assert.StartsWith(
            $"RAD-1,radish,the inn,4,bag 17,{Today:uuuu-MM-dd},{Today:uuuu-MM-dd},{Tier},4,612.5,'=the inn,0,,", rows[1],
            StringComparison.Ordinal);
        Assert.EndsWith(",even,Ada; Ben", rows[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnEntryThatWasWrongIsStruckAndStaysLegible()
    {
        PutDown(Begun("RAD-1", "radish", 4), Sown("RAD-1"));
        var page = await OpenAsync(View.Phone, "/batches/one?lot=RAD-1");

        await page.GetByRole(AriaRole.Link, new() { Name = "Strike entry 2" }).ClickAsync();
        await page.GetByLabel("Why it was wrong").FillAsync("the wrong bag");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike it" }).ClickAsync();

        await Assertions.Expect(page.GetByText("struck by")).ToContainTextAsync("the wrong bag");
        await Assertions.Expect(page.Locator("s")).ToContainTextAsync("seed lot bag 17");
        Assert.Null(Book.Look().Batch("RAD-1")!.Sown);
    }

    [Fact]
    public async Task WhatStandsThereAsksForAnotherScheduleByADraft()
    {
        PutDown(Begun("DIM-1", "radish", 4, Needs(12, 13)), Sown("DIM-1"), Moved("DIM-1", 4));
        var page = await OpenAsync(View.Laptop, "/batches");
        await Assertions.Expect(page.GetByText($"{Tier}: 13 h of light instead of 16 h of light")).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Put it into a draft and try it" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { NameString = "Draft" }).First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".changes")).ToContainTextAsync("- { tier: 2, for: 13 h }");
    }

    [Fact]
    public async Task APlanIsTakenUpAndTheNextOneTakesBackWhatIsNotSown()
    {
        var page = await OpenAsync(View.Laptop, "/batches/plan");
        await TakeUpAsync(page, "PEA-1");
        await Assertions.Expect(page.GetByText("1 batch new.")).ToBeVisibleAsync();

        await page.GotoAsync(new Uri(served.Address, "/batches/plan").ToString());
        await TakeUpAsync(page, "PEA-2");
        await Assertions.Expect(page.GetByText("1 batch new; 1 batch struck (PEA-1).")).ToBeVisibleAsync();
        Assert.Equal("PEA-2", Assert.Single(Book.Look().Batches).Lot);

        await page.GotoAsync(new Uri(served.Address, "/batches/plan").ToString());
        await SendAsync(page, "{}");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("This is no plan");
    }

    // The journal is written on a thread of its own.
    private async Task OnRecordAsync(string words)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        while (!(await served.Client.GetStringAsync("/events.csv", patience.Token)).Contains(words, StringComparison.Ordinal))
        {
            await Task.Delay(100, patience.Token);
        }
    }

    private Task TakeUpAsync(IPage page, string lot) => SendAsync(page, SomePlan.Json(Today, lot));

    private static async Task SendAsync(IPage page, string plan)
    {
        await page.GetByLabel("The plan.json").SetInputFilesAsync(
            new FilePayload { Name = "plan.json", MimeType = "application/json", Buffer = System.Text.Encoding.UTF8.GetBytes(plan) });
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it up" }).ClickAsync();
    }

    private BookDesk Book => new(served.State.Book, served.Rack.Site);

    private static Instant Now => SystemClock.Instance.GetCurrentInstant();

    private LocalDate Today => Now.InZone(served.Rack.Site.Zone).Date;

    private void PutDown(params BookEntry[] entries) => Assert.Null(Book.Write([.. entries]));

    private BatchTakenUp Begun(string lot, string crop, int trays, LitStage? needs = null) =>
        new(Now, "Ada", lot, crop, trays, Today, [needs ?? Needs(12, 18)], [], Today.PlusDays(8), "the inn");

    private BatchSown Sown(string lot) => new(Now, "Ada", lot, Today, "bag 17");

    private BatchMoved Moved(string lot, int trays) => new(Now, "Ada", lot, Today, 0, [new StandsOn(Tier, trays)]);

    private static LitStage Needs(double leastH, double mostH) => new()
    {
        Name = "light",
        Days = new(5, 9),
        DailyLightMolPerM2D = new(0, 100),
        PpfdUmolPerM2S = new(50, 1000),
        PhotoperiodH = new(leastH, mostH),
        Floods = [new(null, new(1, 12))],
    };

    private Task<IPage> OpenAsync(View view, string address) => chromium.OpenAsync(view, new Uri(served.Address, address));
}
