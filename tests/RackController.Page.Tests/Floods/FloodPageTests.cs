namespace RackController.Page.Tests;

/// <summary>The flood log in a real browser.</summary>
public sealed class FloodPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(prepare: MadeUpPast.OfDays(9));

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task ItHoldsToTheGuidelinesOnEveryScreen(string view)
    {
        var page = await chromium.OpenAsync(View.Of(view), new Uri(served.Address, "/floods"));

        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"floods-{view}");
    }

    [Fact]
    public async Task EveryFloodIsInTheFileWithItsTimes()
    {
        var rows = (await served.Client.GetStringAsync("/floods.csv")).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal(1 + 9 * 3, rows.Length);
        Assert.StartsWith("time,rack,because,fill (s),soak (s),water (L),", rows[0], StringComparison.Ordinal);
        Assert.Contains(",north,the schedule says so,300,300,", rows[1], StringComparison.Ordinal);
    }
}
