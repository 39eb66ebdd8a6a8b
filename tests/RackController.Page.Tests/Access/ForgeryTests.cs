using System.Net;
using System.Text;

namespace RackController.Page.Tests;

/// <summary>What pages of somebody else try in a browser that is signed in here.</summary>
public sealed class ForgeryTests : IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await Household.ServedAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [InlineData("/stop", "Sec-Fetch-Site", "cross-site")]
    [InlineData("/stop", "Sec-Fetch-Site", "same-site")]
    [InlineData("/stop", "Origin", "https://elsewhere.example")]
    [InlineData("/stop", "Origin", "null")]
    [InlineData("/racks/0/stop", "Origin", "http://localhost:1")]
    [InlineData("/racks/0/flood", "Sec-Fetch-Site", "cross-site")]
    [InlineData("/sign-in", "Origin", "https://elsewhere.example")]
    [InlineData("/sign-out", "Origin", "https://elsewhere.example")]
    [InlineData("/people/add", "Sec-Fetch-Site", "cross-site")]
    public async Task APageOfAnotherSiteChangesNothing(string address, string header, string value)
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        var token = await ada.FormTokenAsync();
        using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = Guest.Form((Doorman.FormField, token)) };
        request.Headers.Add(header, value);

        using var answer = await ada.Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.False((await served.SeeAsync(_ => true)).Asked[0].IsStopped);
    }

    [Theory]
    [InlineData("Sec-Fetch-Site", "same-origin")]
    [InlineData("Origin", null)]
    public async Task APageOfOursStops(string header, string? value)
    {
        using var guest = new Guest(served.Address);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/stop");
        request.Headers.Add(header, value ?? served.Address.GetLeftPart(UriPartial.Authority));

        using var answer = await guest.Client.SendAsync(request);

        await served.SeeAsync(status => status.Asked[0].IsStopped);
        Assert.Contains("is asked for", await guest.Client.GetStringAsync(answer.Headers.Location), StringComparison.Ordinal);
    }

    [Fact]
    public async Task AFormWithoutTheTokenOfItsSessionIsRefused()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        using var ben = await Household.GuestAsync(served, Household.Ben);
        foreach (var token in new[] { "", "guessed", await ben.FormTokenAsync() })
        {
            using var answer = await ada.Client.PostAsync("/racks/0/skip", Guest.Form((Doorman.FormField, token)));
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }
    }

    [Fact]
    public async Task WhileNobodyIsSetUpAFormNeedsItsTokenToo()
    {
        await using var open = await ServedRack.OfFileAsync();
        using var guest = new Guest(open.Address);

        using var answer = await guest.Client.PostAsync(
            "/people/first", Guest.Form(("name", "mallory"), ("password", Household.Password), ("again", Household.Password)));

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.True(new People(open.State).AreNone);
    }

    [Fact]
    public async Task AScriptWithACookieNeedsTheTokenAndAProgramWithATokenDoesNot()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        Assert.Equal(HttpStatusCode.Forbidden, await AskAsync(ada.Client, null, null));
        Assert.Equal(HttpStatusCode.Accepted, await AskAsync(ada.Client, Doorman.FormHeader, await ada.FormTokenAsync()));
        await UntilAsync(AddToken(Household.Ben, Role.Operate), HttpStatusCode.Accepted);
    }

    [Fact]
    public async Task ATokenMayNoMoreThanItsMakerMayNowAndGoesWithThem()
    {
        var token = AddToken(Household.Ben, Role.Operate);
        var people = new People(served.State);
        await UntilAsync(token, HttpStatusCode.Accepted);

        Assert.Null(people.SetRole(Household.Ben, Role.View));
        await UntilAsync(token, HttpStatusCode.Forbidden);
        Assert.Null(people.Remove(Household.Ben, mayBeLast: false));
        await UntilAsync(token, HttpStatusCode.Unauthorized);
    }

    [Fact]
    public async Task AProgramChangesNothingOfWhoMayDoWhat()
    {
        var token = AddToken(Household.Ada, Role.Configure);
        await UntilAsync(token, HttpStatusCode.Accepted);
        using var request = new HttpRequestMessage(HttpMethod.Get, "/people");
        request.Headers.Authorization = new("Bearer", token);

        using var answer = await served.Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task ARevokedTokenIsWorthNothingAtOnce()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        var token = AddToken(Household.Ada, Role.Operate);
        await UntilAsync(token, HttpStatusCode.Accepted);

        using var answer = await ada.PostAsync("/people/tokens/revoke", ("token", Secret.Digest(token)));

        Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(served.Client, "Authorization", $"Bearer {token}"));
    }

    private string AddToken(string maker, Role role)
    {
        var secret = Secret.New();
        var token = new ProgramToken("a test", role, Secret.Digest(secret), NodaTime.Instant.FromUtc(2027, 1, 15, 11, 0));
        Assert.Null(new People(served.State).AddToken(maker, token));
        return secret;
    }

    // Another process changed the file: the service takes it up within a second.
    private async Task UntilAsync(string token, HttpStatusCode code)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (await AskAsync(served.Client, "Authorization", $"Bearer {token}") != code)
        {
            await Task.Delay(50, patience.Token);
        }
    }

    private static async Task<HttpStatusCode> AskAsync(HttpClient client, string? header, string? value)
    {
        using var content = new StringContent("""{"ask":"resume"}""", Encoding.UTF8, "application/json");
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/ask") { Content = content };
        if (header is not null)
        {
            request.Headers.Add(header, value);
        }

        using var answer = await client.SendAsync(request);
        return answer.StatusCode;
    }
}
