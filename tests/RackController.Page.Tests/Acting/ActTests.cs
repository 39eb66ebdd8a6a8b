using System.Net;
using Microsoft.Playwright;
using RackController.Control;

namespace RackController.Page.Tests;

/// <summary>What can be asked of a rack, in a browser: what comes of it is shown first.</summary>
public sealed class ActTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Fact]
    public async Task OnePressStopsEverything()
    {
        var page = await chromium.OpenAsync(View.Phone, served.Address);

        await page.GetByRole(AriaRole.Button, new() { Name = "Stop everything" }).ClickAsync();

        await served.SeeAsync(status => status.Asked[0].IsStopped);
        await Assertions.Expect(page.GetByText("Stopped: every load is in its safe state")).ToBeVisibleAsync();
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, "act-stopped");
    }

    [Theory]
    [InlineData("Flood now", "Flood now", "The pump runs for")]
    [InlineData("Skip the next flood", "Skip it", "is left out")]
    [InlineData("Hands in the rack", "Hold the pump", "Pull the rack's plug")]
    [InlineData("Tier 2 out of use", "Out of use", "no light from now on")]
    public async Task WhatComesOfItIsShownBeforeItIsAsked(string link, string button, string consequence)
    {
        var page = await chromium.OpenAsync(View.Phone, served.Address);
        await page.Locator("details.act summary").ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = link }).ClickAsync();

        await Assertions.Expect(page.Locator(".consequences")).ToContainTextAsync(consequence);
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"act-{button.Replace(' ', '-')}");
        var before = (await served.SeeAsync(_ => true)).Recent.Count(happened => happened.Kind == EventKind.Request);
        await page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();

        await served.SeeAsync(status => status.Recent.Count(happened => happened.Kind == EventKind.Request) > before);
        await Assertions.Expect(page.Locator("#freshness")).ToHaveTextAsync("live");
    }

    [Fact]
    public async Task AHoldCountsDownAndEndsWhenHandsAreOut()
    {
        served.Rack.TryAsk(new HoldForService("a test", new(0), NodaTime.Duration.FromMinutes(5)));
        await served.SeeAsync(status => status.Asked[0].HoldLeft is not null);
        var page = await chromium.OpenAsync(View.Phone, served.Address);
        await Assertions.Expect(page.GetByText("held for another 4 min")).ToBeVisibleAsync();
        await Chromium.KeepAsync(page, "act-held");

        await page.GetByRole(AriaRole.Link, new() { Name = "Hands are out" }).ClickAsync();
        await Assertions.Expect(page.Locator(".consequences")).ToContainTextAsync("keep your hands out");
        await page.GetByRole(AriaRole.Button, new() { Name = "Hands are out" }).ClickAsync();

        await served.SeeAsync(status => status.Asked[0].HoldLeft is null);
    }

    [Fact]
    public async Task TheMainThingsAreDoneByKeyboardAlone()
    {
        var page = await chromium.OpenAsync(View.Laptop, served.Address);
        await TabToAsync(page, "Ask of north");
        await page.Keyboard.PressAsync("Enter");
        await FollowAsync(page, "Flood now", "/racks/0/flood");
        await TabToAsync(page, "Flood now");
        await page.Keyboard.PressAsync("Enter");

        await served.SeeAsync(status => status.Floods[0] == FloodPhase.Waiting);
    }

    [Fact]
    public async Task ALatchNeedsTwoPresses()
    {
        using var guest = new Guest(served.Address);
        using var first = await guest.PostAsync("/alarms/confirm-reset", ("alarm", "north/high-water"));
        Assert.Equal(HttpStatusCode.SeeOther, first.StatusCode);

        var status = await served.SeeAsync(at => at.Recent.Any(happened => happened.Subject == "north/high-water"));
        Assert.Contains("ask for the reset first", status.Recent.First(happened => happened.Subject == "north/high-water").What,
            StringComparison.Ordinal);
    }

    // A picture of the rack that arrives between two keys may take the focus, as it may from a person, who presses again.
    private static async Task FollowAsync(IPage page, string name, string address)
    {
        for (var presses = 1; !page.Url.EndsWith(address, StringComparison.Ordinal); presses++)
        {
            Assert.InRange(presses, 1, 4);
            await TabToAsync(page, name);
            await page.Keyboard.PressAsync("Enter");
            for (var waits = 0; waits < 50 && !page.Url.EndsWith(address, StringComparison.Ordinal); waits++)
            {
                await Task.Delay(100);
            }
        }

        await page.WaitForLoadStateAsync();
    }

    private static async Task TabToAsync(IPage page, string name)
    {
        const int most = 80;
        for (var i = 0; i < most; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>("name => document.activeElement.textContent.trim().startsWith(name)", name))
            {
                return;
            }
        }

        Assert.Fail($"no way by keyboard to {name}");
    }
}
