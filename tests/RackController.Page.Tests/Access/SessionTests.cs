using System.Net;

namespace RackController.Page.Tests;

/// <summary>Signing in and out, from outside.</summary>
public sealed class SessionTests : IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await Household.ServedAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Fact]
    public async Task WhoHasNotSignedInSeesTheSignInAndNothingOfTheSite()
    {
        using var guest = new Guest(served.Address);

        Assert.Equal(HttpStatusCode.SeeOther, await guest.GetAsync("/"));
        var page = await guest.Client.GetStringAsync("/sign-in");
        Assert.Contains("The rack is driven.", page, StringComparison.Ordinal);
        Assert.Contains("Stop everything", page, StringComparison.Ordinal);
        Assert.DoesNotContain(served.Rack.Site.Name, page, StringComparison.Ordinal);
        Assert.DoesNotContain(served.Rack.Site.Racks[0].Name, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AStopNeedsNoName()
    {
        using var guest = new Guest(served.Address);
        using var answer = await guest.Client.PostAsync("/stop", null);

        await served.SeeAsync(status => status.Asked[0].IsStopped);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }

    [Fact]
    public async Task TheCookieIsForThisSiteAndNoScript()
    {
        using var guest = new Guest(served.Address);
        using var answer = await guest.Client.PostAsync("/sign-in", Guest.Form(("name", "ADA"), ("password", Household.Password)));

        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.StartsWith("session=", cookie, StringComparison.Ordinal);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("path=/", cookie, StringComparison.OrdinalIgnoreCase);
        var kept = await File.ReadAllTextAsync(Path.Combine(served.State.Path, "sessions.json"));
        Assert.DoesNotContain(guest.Cookie, kept, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AStolenCookieIsWorthNothingAfterSignOut()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        using var thief = WithoutCookies();
        thief.DefaultRequestHeaders.Add("Cookie", $"session={ada.Cookie}");
        Assert.Equal(HttpStatusCode.OK, (await thief.GetAsync("/api/status")).StatusCode);

        using var answer = await ada.PostAsync("/sign-out");

        Assert.Equal(HttpStatusCode.Unauthorized, (await thief.GetAsync("/api/status")).StatusCode);
    }

    [Fact]
    public async Task ASessionThatSomebodyPlantedIsNotTakenOver()
    {
        const string planted = "planted-by-somebody-else";
        using var victim = WithoutCookies();
        victim.DefaultRequestHeaders.Add("Cookie", $"session={planted}");

        using var answer = await victim.PostAsync("/sign-in", Guest.Form(("name", Household.Ada), ("password", Household.Password)));

        Assert.DoesNotContain(planted, Assert.Single(answer.Headers.GetValues("Set-Cookie")), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, (await victim.GetAsync("/api/status")).StatusCode);
    }

    [Fact]
    public async Task SignedOutEverywhereIsSignedOutOnEveryDevice()
    {
        using var phone = await Household.GuestAsync(served, Household.Ada);
        using var laptop = await Household.GuestAsync(served, Household.Ada);
        using var ben = await Household.GuestAsync(served, Household.Ben);

        using var answer = await phone.PostAsync("/account/end-all-sessions");

        Assert.Equal(HttpStatusCode.SeeOther, await phone.GetAsync("/"));
        Assert.Equal(HttpStatusCode.SeeOther, await laptop.GetAsync("/"));
        Assert.Equal(HttpStatusCode.OK, await ben.GetAsync("/"));
    }

    [Fact]
    public async Task OneSessionIsEndedFromAnother()
    {
        using var phone = await Household.GuestAsync(served, Household.Ada);
        using var laptop = await Household.GuestAsync(served, Household.Ada);

        using var answer = await laptop.PostAsync("/account/end-session", ("session", Secret.Digest(phone.Cookie)));

        Assert.Equal(HttpStatusCode.SeeOther, await phone.GetAsync("/"));
        Assert.Equal(HttpStatusCode.OK, await laptop.GetAsync("/"));
    }

    [Fact]
    public async Task NobodyEndsTheSessionOfSomebodyElse()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        using var ben = await Household.GuestAsync(served, Household.Ben);

        using var answer = await ben.PostAsync("/account/end-session", ("session", Secret.Digest(ada.Cookie)));

        Assert.Equal(HttpStatusCode.OK, await ada.GetAsync("/"));
    }

    [Fact]
    public async Task AnotherPasswordEndsTheOtherSessions()
    {
        const string fresh = "three dry cotton socks";
        using var phone = await Household.GuestAsync(served, Household.Ada);
        using var laptop = await Household.GuestAsync(served, Household.Ada);

        using var wrong = await laptop.PostAsync(
            "/account/password", ("current", "not the present one"), ("password", fresh), ("again", fresh));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        using var right = await laptop.PostAsync(
            "/account/password", ("current", Household.Password), ("password", fresh), ("again", fresh));

        Assert.Equal(HttpStatusCode.SeeOther, right.StatusCode);
        Assert.Equal(HttpStatusCode.OK, await laptop.GetAsync("/"));
        Assert.Equal(HttpStatusCode.SeeOther, await phone.GetAsync("/"));
        Assert.Equal(HttpStatusCode.Unauthorized, await phone.SignInAsync(Household.Ada, Household.Password));
        Assert.Equal(HttpStatusCode.SeeOther, await phone.SignInAsync(Household.Ada, fresh));
    }

    private HttpClient WithoutCookies() =>
        new(new HttpClientHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = served.Address };
}
