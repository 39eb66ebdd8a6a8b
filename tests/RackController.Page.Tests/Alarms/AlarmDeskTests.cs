using Microsoft.Playwright;
using RackController.Control;
using RackController.Service;

namespace RackController.Page.Tests;

/// <summary>The page of alarms in a real browser, on a rack whose low float is dry.</summary>
public sealed class AlarmDeskTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private const string Key = "north/low-float";

    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(prepare: MadeUpPast.OfDays(9));

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task ItHoldsToTheGuidelinesOnEveryScreen(string view)
    {
        served.Rack.TryAsk(new SetAlarmOutOfService("a test", Key, OutOfService: true));
        await served.SeeAsync(status => StateOf(status) == AlarmState.OutOfService);
        var page = await chromium.OpenAsync(View.Of(view), new Uri(served.Address, "/alarms"));

        await page.GetByText("Every alarm of this site").ClickAsync();
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"alarms-{view}");
    }

    [Fact]
    public async Task AnAlarmGoesOutOfServiceAndBackByTwoPressesEach()
    {
        var page = await chromium.OpenAsync(View.Phone, new Uri(served.Address, "/alarms"));
        await page.GetByText("Every alarm of this site").ClickAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = $"{Key} out of service" }).ClickAsync();
        await Assertions.Expect(page.Locator(".consequences")).ToContainTextAsync("Its interlock goes on");
        await page.GetByRole(AriaRole.Button, new() { Name = "Out of service" }).ClickAsync();
        await served.SeeAsync(status => StateOf(status) == AlarmState.OutOfService);

        await page.GotoAsync(new Uri(served.Address, "/alarms").ToString());
        await page.Locator("article").Filter(new() { HasText = Key }).GetByText("Back in service").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Back in service" }).ClickAsync();
        await served.SeeAsync(status => StateOf(status) is null);
    }

    [Fact]
    public async Task AnAlarmThatNobodyHasIsNotAskedAbout()
    {
        var answer = await served.Client.GetAsync(new Uri("/alarms/shelve?alarm=attic/x", UriKind.Relative));

        Assert.Equal("/alarms", answer.Headers.Location!.ToString());
    }

    [Fact]
    public async Task NobodyShelvesForLongerThanADay()
    {
        using var guest = new Guest(served.Address);

        using var answer = await guest.PostAsync("/alarms/shelve", ("alarm", Key), ("hours", "48"));

        Assert.Equal(System.Net.HttpStatusCode.BadRequest, answer.StatusCode);
    }

    private static AlarmState? StateOf(SiteStatus status) => status.Alarms.FirstOrDefault(alarm => alarm.Key == Key)?.State;
}
