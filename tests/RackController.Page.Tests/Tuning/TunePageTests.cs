using Microsoft.Playwright;

namespace RackController.Page.Tests;

/// <summary>A rack fitted to its floods, in a browser.</summary>
public sealed class TunePageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private static readonly LocatorAssertionsToContainTextOptions patiently = new() { Timeout = 60_000 };

    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(
        TimedPast.RackFile, prepare: TimedPast.OfFloods([], [], [3], [3], []));

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task ItHoldsToTheGuidelinesOnEveryScreen(string view)
    {
        var page = await OpenAsync(View.Of(view));
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"tune-{view}");
    }

    [Fact]
    public async Task ItFitsAScreenOf320Pixels() => await Judgement.HoldsAsync(await OpenAsync(View.Phone with { Width = 320 }));

    [Fact]
    public async Task WithoutScriptsItIsLookedAtAgainByHand()
    {
        var page = await chromium.OpenAsync(View.Phone with { Width = 320 }, new Uri(served.Address, "/tune"), withScript: false);
        await page.GetByRole(AriaRole.Button, new() { Name = "Fit to these floods" }).ClickAsync();
        var again = page.GetByRole(AriaRole.Link, new() { Name = "Look again" });
        while (await again.CountAsync() > 0)
        {
            await again.ClickAsync();
        }

        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Put it into a draft" })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Stop everything" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task WhatFloodsOnRecordTellIsPutIntoADraftThatIsTried()
    {
        var page = await OpenAsync(View.Laptop);
        await Assertions.Expect(page.GetByRole(AriaRole.Row)).ToHaveCountAsync(1 + 5);
        await page.GetByRole(AriaRole.Button, new() { Name = "Fit to these floods" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("the pump's speed: 0.9", patiently);
        foreach (var view in View.All.Append(View.Phone with { Width = 320 }))
        {
            var seen = await chromium.OpenAsync(view, new Uri(served.Address, "/tune/fit"));
            await Judgement.HoldsAsync(seen);
            await Chromium.KeepAsync(seen, $"tune-fit-{view}");
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Put it into a draft" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Draft of" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".changes .goes").First).ToContainTextAsync("2025-11-15");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("floods a day", patiently);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Put it in place" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task TimesByHandAreKeptWhereOneCannotBeReadAndFittedWhereAllCan()
    {
        var page = await OpenAsync(View.Phone);
        await WriteAsync(page, 1, "2:26, 2:27, 2:25");
        await WriteAsync(page, 2, "2:40, 2:41, 2.39");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fit to these times" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Some times cannot be read");
        await Assertions.Expect(Fill(page, 1)).ToHaveValueAsync("2:26, 2:27, 2:25");
        await Assertions.Expect(Fill(page, 2)).ToHaveAttributeAsync("aria-invalid", "true");
        await Judgement.HoldsAsync(page);

        await WriteAsync(page, 2, "2:40, 2:41, 2:39");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fit to these times" }).ClickAsync();

        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("3 floods, the last on ", patiently);
    }

    [Fact]
    public async Task AFloodIsAskedForWhereWhatComesOfItIsShown()
    {
        var page = await OpenAsync(View.Tablet);

        await page.GetByRole(AriaRole.Link, new() { Name = "Flood now…" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Flood sprouts now" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".consequences")).ToContainTextAsync("then the trays drain for");
    }

    private Task<IPage> OpenAsync(View view) => chromium.OpenAsync(view, new Uri(served.Address, "/tune"));

    private static ILocator Fill(IPage page, int tier) =>
        page.GetByRole(AriaRole.Group, new() { Name = $"Tier {tier}" }).GetByLabel("Fills in");

    private static Task WriteAsync(IPage page, int tier, string times) => Fill(page, tier).FillAsync(times);
}
