using Microsoft.Playwright;
using RackController.Control;

namespace RackController.Page.Tests;

/// <summary>The first page in a real browser, on a simulated rack.</summary>
public sealed class NowPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task ItHoldsToTheGuidelinesOnEveryScreen(string view)
    {
        var page = await chromium.OpenAsync(View.Of(view), served.Address);

        await Assertions.Expect(page.Locator("#freshness")).ToHaveTextAsync("live");
        await Chromium.KeepAsync(page, $"now-{view}");
        await page.Locator("details.act summary").First.ClickAsync();
        await page.Locator(".loads summary").First.ClickAsync();
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"now-opened-{view}");
    }

    [Fact]
    public async Task SeveralRacksHoldToTheGuidelinesToo()
    {
        await using var several = await ServedRack.OfFileAsync("demo-three-racks.yaml", speed: 200);
        several.Rack.TryAsk(new Stop("a test", new(1)));
        await several.SeeAsync(status => status.Asked[1].IsStopped);
        foreach (var view in View.All)
        {
            var page = await chromium.OpenAsync(view, several.Address);
            await Judgement.HoldsAsync(page);
            await Chromium.KeepAsync(page, $"several-{view}");
        }
    }

    [Fact]
    public async Task ItFitsAScreenOf320Pixels()
    {
        var page = await chromium.OpenAsync(View.Phone with { Width = 320 }, served.Address);

        await Judgement.HoldsAsync(page);
    }

    [Fact]
    public async Task ItShowsEveryLoadAndWhy()
    {
        var status = await served.SeeAsync(_ => true);
        var page = await chromium.OpenAsync(View.Phone, served.Address);

        foreach (var load in status.Loads)
        {
            var name = served.Rack.Site[load.Load].Name.Split('/')[1];
            var line = page.Locator(".loads li").Filter(new LocatorFilterOptions { Has = page.GetByText(name, new() { Exact = true }) });
            await line.Locator("summary").ClickAsync();
            await Assertions.Expect(line.Locator("dl")).ToContainTextAsync(load.Demand);
        }
    }

    [Fact]
    public async Task WhatHappensShowsWithoutAskingAgain()
    {
        // So fast that the pump's rest after a start is over in seconds.
        await using var fast = await ServedRack.OfFileAsync(speed: 60);
        var page = await chromium.OpenAsync(View.Tablet, fast.Address);
        await page.Locator(".loads summary").First.ClickAsync();

        fast.Rack.TryAsk(new FloodNow("a test", new(0)));

        await Assertions.Expect(page.Locator("h2", new() { HasText = "north" })).ToContainTextAsync("filling", new() { Timeout = 45_000 });
        await Assertions.Expect(page.Locator(".loads details").First).ToHaveAttributeAsync("open", "");
        await Chromium.KeepAsync(page, "now-filling");
    }

    [Fact]
    public async Task WithoutScriptItShowsTheStateAndStops()
    {
        var page = await chromium.OpenAsync(View.Phone, served.Address, withScript: false);
        await Assertions.Expect(page.Locator(".loads")).ToContainTextAsync("aerator");

        await page.GetByRole(AriaRole.Button, new() { Name = "Stop everything" }).ClickAsync();

        await served.SeeAsync(status => status.Asked[0].IsStopped);
    }

    [Fact]
    public async Task ItSaysWhenTheServiceIsGone()
    {
        var page = await chromium.OpenAsync(View.Laptop, served.Address);
        await Assertions.Expect(page.Locator("#freshness")).ToHaveTextAsync("live");

        await served.EndAsync();

        await Assertions.Expect(page.Locator("#freshness")).ToContainTextAsync("cannot be reached", new() { Timeout = 15_000 });
        await Chromium.KeepAsync(page, "now-gone");
    }
}
