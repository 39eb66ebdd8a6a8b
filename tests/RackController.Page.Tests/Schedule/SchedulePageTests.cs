using Microsoft.Playwright;

namespace RackController.Page.Tests;

/// <summary>The rack file in a browser: judged, tried, put in place, and put back.</summary>
public sealed class SchedulePageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task ItHoldsToTheGuidelinesOnEveryScreen(string view)
    {
        var page = await OpenAsync(View.Of(view));
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"schedule-{view}");
    }

    [Fact]
    public async Task ADraftHoldsToTheGuidelinesOnEveryScreen()
    {
        var page = await OpenAsync(View.Laptop);
        await WriteAsync(page, text => text.Replace("19:00", "18:00", StringComparison.Ordinal));
        var apply = page.GetByRole(AriaRole.Button, new() { Name = "Put it in place" });
        await Assertions.Expect(apply).ToBeVisibleAsync(new() { Timeout = 60_000 });

        foreach (var view in View.All)
        {
            var seen = await chromium.OpenAsync(view, new Uri(served.Address, "/schedule/draft"));
            await Judgement.HoldsAsync(seen);
            await Chromium.KeepAsync(seen, $"draft-{view}");
        }
    }

    [Fact]
    public async Task AMistakeIsToldWithItsLineAndIsNotPutInPlace()
    {
        var page = await OpenAsync(View.Tablet);

        await WriteAsync(page, text => text.Replace("flow:", "flwo:", StringComparison.Ordinal));

        await Assertions.Expect(page.Locator(".complaints")).ToContainTextAsync("has no key `flwo`: did you mean `flow`?");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Put it in place" })).ToHaveCountAsync(0);
        await Chromium.KeepAsync(page, "draft-mistake");
    }

    [Fact]
    public async Task WhatChangesIsShownBeforeItIsPutInPlaceAndCommentsSurvive()
    {
        var page = await OpenAsync(View.Laptop);
        await WriteAsync(page, text => text.Replace("19:00", "18:00", StringComparison.Ordinal) + "# a remark of mine\n");
        await Assertions.Expect(page.Locator(".changes .goes").First).ToContainTextAsync("19:00");
        await Assertions.Expect(page.Locator(".changes .comes").First).ToContainTextAsync("18:00");
        await Assertions.Expect(page.Locator("table")).ToContainTextAsync("floods a day", new() { Timeout = 60_000 });

        await page.GetByRole(AriaRole.Button, new() { Name = "Put it in place" }).ClickAsync();

        Assert.True((await served.EndedAsync()).StartAgain);
        var text = await File.ReadAllTextAsync(served.RackFile);
        Assert.Contains("18:00", text, StringComparison.Ordinal);
        Assert.EndsWith("# a remark of mine\n", text, StringComparison.Ordinal);
        Assert.Contains("19:00", await File.ReadAllTextAsync(Assert.Single(Directory.GetFiles(served.Versions))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task AFileThatSomebodyChangedMeanwhileIsNotOverwritten()
    {
        var page = await OpenAsync(View.Laptop);
        await WriteAsync(page, text => text.Replace("19:00", "18:00", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator("table")).ToContainTextAsync("floods a day", new() { Timeout = 60_000 });
        await File.AppendAllTextAsync(served.RackFile, "# by hand\n");

        await page.GetByRole(AriaRole.Button, new() { Name = "Put it in place" }).ClickAsync();

        await Assertions.Expect(page.Locator("body")).ToContainTextAsync("Somebody has changed the file");
        Assert.EndsWith("# by hand\n", await File.ReadAllTextAsync(served.RackFile), StringComparison.Ordinal);
    }

    private async Task<IPage> OpenAsync(View view) => await chromium.OpenAsync(view, new Uri(served.Address, "/schedule"));

    private static async Task WriteAsync(IPage page, Func<string, string> change)
    {
        var area = page.GetByLabel("The rack file");
        await area.FillAsync(change(await area.InputValueAsync()));
        await page.GetByRole(AriaRole.Button, new() { Name = "Judge and try it" }).ClickAsync();
    }
}
