using System.Net;

namespace RackController.Page.Tests;

/// <summary>Who may fit and draft, what is refused in one line, and that it all works without a browser's scripts.</summary>
public sealed class TuneDeskTests : IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(
        TimedPast.RackFile,
        prepare: folder =>
        {
            TimedPast.OfFloods([], [], [2])(folder);
            Household.MoveIn(folder);
        });

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Fact]
    public async Task WhoMayOnlyLookFindsFloodsAndNoButton()
    {
        using var cleo = await Household.GuestAsync(served, Household.Cleo);

        var page = await cleo.Client.GetStringAsync("/tune");

        Assert.Contains("Valves shut", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Fit to these", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Flood now", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, await PostAsync(cleo, "/tune/fit"));
    }

    [Fact]
    public async Task WhoMayOperateFitsAndDraftsNothing()
    {
        using var ben = await Household.GuestAsync(served, Household.Ben);

        var page = await FitAsync(ben);

        Assert.Contains("the pump&#x27;s speed: 0.9", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Put it into a draft", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, await PostAsync(ben, "/tune/draft", ("fit", "1")));
    }

    [Fact]
    public async Task WhoMayConfigureDraftsTheFitThatWasSeenAndNoOther()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        Assert.Contains("Nothing was fitted", await RefusedAsync(ada, "1"), StringComparison.Ordinal);
        await FitAsync(ada);
        await FitAsync(ada);

        Assert.Contains("fitted anew since", await RefusedAsync(ada, "1"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.SeeOther, await PostAsync(ada, "/tune/draft", ("fit", "2")));
        Assert.Contains(
            "The draft that there is now is thrown away.", await ada.Client.GetStringAsync("/tune/fit"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task AFileThatWasChangedSinceTheFitIsNotDraftedOver()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        await FitAsync(ada);
        await File.AppendAllTextAsync(served.RackFile, "# by hand\n");

        Assert.Contains("changed since the fit was begun", await RefusedAsync(ada, "1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task TooFewFloodsSinceADayAreToldAndRefused()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        var tomorrow = DateTime.UtcNow.AddDays(2).ToString("yyyy-MM-dd");

        Assert.Contains("No flood is on record", await ada.Client.GetStringAsync($"/tune?since={tomorrow}"), StringComparison.Ordinal);
        Assert.Contains("is no date", await ada.Client.GetStringAsync("/tune?since=spring"), StringComparison.Ordinal);
        Assert.Contains("there is no rack", await ada.Client.GetStringAsync("/tune?rack=attic"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PostAsync(ada, "/tune/fit", ("since", tomorrow)));
        Assert.Equal(HttpStatusCode.SeeOther, await PostAsync(ada, "/tune/fit", ("by", "hand"), ("fill-1", "2:26")));
        Assert.Contains("1 flood with times is too few", await FittedAsync(ada), StringComparison.Ordinal);
    }

    [Fact]
    public async Task ARackFileThatCannotBeRunIsToldInALine()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        await File.AppendAllTextAsync(served.RackFile, "nonsense: yes\n");

        Assert.Contains("The rack file cannot be run as it stands", await ada.Client.GetStringAsync("/tune"), StringComparison.Ordinal);
    }

    private static async Task<string> FitAsync(Guest guest)
    {
        Assert.Equal(HttpStatusCode.SeeOther, await PostAsync(guest, "/tune/fit", ("rack", "0"), ("since", "")));
        return await FittedAsync(guest);
    }

    // Nothing runs in a browser here, so the page is asked for again, as its own words say.
    private static async Task<string> FittedAsync(Guest guest)
    {
        while (true)
        {
            var page = await guest.Client.GetStringAsync("/tune/fit");
            if (!page.Contains("It is being worked out", StringComparison.Ordinal))
            {
                return page;
            }

            await Task.Delay(100);
        }
    }

    private static async Task<string> RefusedAsync(Guest guest, string fit)
    {
        using var answer = await guest.PostAsync("/tune/draft", ("fit", fit));
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync();
    }

    private static async Task<HttpStatusCode> PostAsync(Guest guest, string address, params (string Name, string Value)[] fields)
    {
        using var answer = await guest.PostAsync(address, fields);
        return answer.StatusCode;
    }
}
