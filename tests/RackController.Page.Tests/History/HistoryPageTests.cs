using Microsoft.Playwright;

namespace RackController.Page.Tests;

/// <summary>The past in a real browser.</summary>
public sealed class HistoryPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(prepare: MadeUpPast.OfDays(9));

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task ItHoldsToTheGuidelinesOnEveryScreen(string view)
    {
        var page = await chromium.OpenAsync(View.Of(view), new Uri(served.Address, "/history"));

        await Assertions.Expect(page.Locator("#chart-temperatures svg").First).ToBeVisibleAsync();
        await Chromium.KeepAsync(page, $"history-{view}");
        await page.Locator("section details summary").First.ClickAsync();
        await page.Locator("section details summary").Last.ClickAsync();
        await Judgement.HoldsAsync(page);
    }

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task AYearIsToldDayByDay(string view)
    {
        var page = await chromium.OpenAsync(View.Of(view), new Uri(served.Address, "/history?length=year"));

        await Assertions.Expect(page.Locator("#chart-energy svg").First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#chart-daily-light svg").First).ToBeVisibleAsync();
        await page.Locator("section details summary").First.ClickAsync();
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"history-year-{view}");
    }

    [Fact]
    public async Task NothingOfItBreaksThePolicyThatForbidsScriptsAndStylesInThePage()
    {
        var page = await chromium.OpenAsync(View.Laptop);
        var complaints = new List<string>();
        page.Console += (_, said) => complaints.Add(said.Text);
        page.PageError += (_, error) => complaints.Add(error);
        await page.GotoAsync(new Uri(served.Address, "/history").ToString());
        await Assertions.Expect(page.Locator("#chart-humidity svg").First).ToBeVisibleAsync();

        await page.Locator("#chart-temperatures .nsewdrag").HoverAsync();
        await Assertions.Expect(page.Locator("#chart-temperatures .hovertext").First).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Closer" }).ClickAsync();

        Assert.Empty(complaints);
    }

    [Fact]
    public async Task AllChartsShowTheSameTimeAndComeCloserTogether()
    {
        var page = await chromium.OpenAsync(View.Phone, new Uri(served.Address, "/history?length=week"));
        await Assertions.Expect(page.Locator("#chart-humidity svg").First).ToBeVisibleAsync();
        var before = await RangesAsync(page);

        await page.GetByRole(AriaRole.Button, new() { Name = "Closer" }).ClickAsync();
        var after = await RangesAsync(page);

        Assert.Single(before.Distinct());
        Assert.Single(after.Distinct());
        Assert.Equal(before[0] / 2, after[0], 60_000.0);
    }

    [Fact]
    public async Task WithoutScriptTheTablesTellTheSame()
    {
        var address = new Uri(served.Address, "/history?length=week&show=temperatures");
        var page = await chromium.OpenAsync(View.Phone, address, withScript: false);

        await page.Locator("section details summary").ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Region, new() { Name = "Temperatures in numbers" })).ToContainTextAsync("water");
        Assert.InRange(await page.Locator("section tbody tr").CountAsync(), 40, 48);
    }

    private static Task<double[]> RangesAsync(IPage page) => page.EvaluateAsync<double[]>(
        """
        () => [...document.querySelectorAll(".chart")].map(it => it._fullLayout.xaxis.range.map(at => +new Date(at))).map(([a, b]) => b - a)
        """);
}
