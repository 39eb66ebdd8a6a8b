using Microsoft.Playwright;

namespace RackController.Page.Tests;

/// <summary>Sign-in, people and account in a browser.</summary>
public sealed class AccessPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await Household.ServedAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task TheyHoldToTheGuidelinesOnEveryScreen(string screen)
    {
        var view = View.Of(screen);
        var page = await chromium.OpenAsync(view, served.Address);
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"sign-in-{view}");
        await SignInAsync(page, Household.Ada);

        await page.GotoAsync(new Uri(served.Address, "/people").ToString());
        await page.Locator(".rows summary").First.ClickAsync();
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"people-{view}");

        await page.GotoAsync(new Uri(served.Address, "/account").ToString());
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"account-{view}");
    }

    [Theory]
    [InlineData("/sign-in")]
    [InlineData("/people")]
    [InlineData("/account")]
    public async Task TheyFitAScreenOf320Pixels(string address)
    {
        var page = await chromium.OpenAsync(View.Phone with { Width = 320 }, served.Address);
        if (address != "/sign-in")
        {
            await SignInAsync(page, Household.Ada);
        }

        await page.GotoAsync(new Uri(served.Address, address).ToString());

        await Judgement.HoldsAsync(page);
    }

    [Fact]
    public async Task AWrongPasswordIsToldAndLetsNobodyIn()
    {
        var page = await chromium.OpenAsync(View.Phone, served.Address);
        await page.GetByLabel("Name").FillAsync(Household.Ada);
        await page.GetByLabel("Password").FillAsync("not the password");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Name or password is wrong");
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, "sign-in-wrong");
    }

    [Fact]
    public async Task WhoMayOnlyLookFindsNothingToAskButTheStop()
    {
        var page = await chromium.OpenAsync(View.Tablet, served.Address);
        await SignInAsync(page, Household.Cleo);

        await page.Locator("details.act summary").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Flood now" })).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "People" })).ToHaveCountAsync(0);
        await Chromium.KeepAsync(page, "now-view-only");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop everything" }).ClickAsync();

        await served.SeeAsync(status => status.Asked[0].IsStopped);
    }

    [Fact]
    public async Task SomebodyIsAddedAndATokenMadeWithoutScript()
    {
        var page = await chromium.OpenAsync(View.Laptop, served.Address, withScript: false);
        await SignInAsync(page, Household.Ada);
        await page.GetByRole(AriaRole.Link, new() { Name = "People" }).ClickAsync();

        var form = page.Locator("form[action='/people/add']");
        await form.GetByLabel("Name").FillAsync("dora");
        await form.GetByLabel("Password").FillAsync("seven warm wool hats");
        await form.GetByLabel("May").SelectOptionAsync("operate");
        await form.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(page.Locator(".rows").First).ToContainTextAsync("dora");

        var tokens = page.Locator("form[action='/people/tokens/add']");
        await tokens.GetByLabel("What it is for").FillAsync("the kitchen screen");
        await tokens.GetByRole(AriaRole.Button).ClickAsync();
        var secret = await page.Locator(".secret").InnerTextAsync();
        await Chromium.KeepAsync(page, "token");
        served.Client.DefaultRequestHeaders.Authorization = new("Bearer", secret);
        Assert.Equal(System.Net.HttpStatusCode.OK, (await served.Client.GetAsync("/api/status")).StatusCode);
    }

    [Fact]
    public async Task NobodyIsRemovedByASinglePress()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);

        using (var once = await ada.PostAsync("/people/remove", ("person", Household.Cleo)))
        {
            Assert.Equal(System.Net.HttpStatusCode.UnprocessableEntity, once.StatusCode);
            Assert.Contains("Tick that cleo", await once.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        using var sure = await ada.PostAsync("/people/remove", ("person", Household.Cleo), ("sure", "yes"));
        Assert.Equal(System.Net.HttpStatusCode.SeeOther, sure.StatusCode);
        Assert.DoesNotContain("cleo", await ada.Client.GetStringAsync("/people"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhoIsSignedOutElsewhereIsTakenToTheSignIn()
    {
        var page = await chromium.OpenAsync(View.Laptop, served.Address);
        await SignInAsync(page, Household.Ben);
        await Assertions.Expect(page.Locator("#freshness")).ToHaveTextAsync("live");

        using var phone = await Household.GuestAsync(served, Household.Ben);
        using var answer = await phone.PostAsync("/account/end-all-sessions");

        await Assertions.Expect(page).ToHaveURLAsync(new Uri(served.Address, "/sign-in").ToString(), new() { Timeout = 20_000 });
    }

    private static async Task SignInAsync(IPage page, string name)
    {
        await page.GetByLabel("Name").FillAsync(name);
        await page.GetByLabel("Password").FillAsync(Household.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Assertions.Expect(page.Locator("nav")).ToContainTextAsync(name);
    }
}
