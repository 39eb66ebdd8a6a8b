using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace RackController.Page.Tests;

/// <summary>Before anybody is set up the page is for this machine only; from then on it is where it was asked to be, by HTTPS.</summary>
public sealed class FirstPersonTests
{
    // All of this machine's own, one of which stands for the house: 127.0.0.0/8 is loopback (RFC 6890), so the page is asked for at `any`.
    private static readonly IPEndPoint everywhere = new(IPAddress.Any, 0);

    [Fact]
    public async Task BeforeThatItIsForThisMachineWhateverWasAsked()
    {
        await using var served = await ServedRack.OfFileAsync(howServed: options => options with { Listen = everywhere });

        Assert.Equal(("http", "127.0.0.1"), (served.Address.Scheme, served.Address.Host));
        using var guest = new Guest(served.Address);
        Assert.Contains("Set up the first person", await guest.Client.GetStringAsync("/people"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rack.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("127.0.0.1.rack.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("localhost", HttpStatusCode.OK)]
    [InlineData("[::1]:8474", HttpStatusCode.OK)]
    public async Task ANameThatSomebodyLedHereIsNotAnswered(string host, HttpStatusCode code)
    {
        await using var served = await ServedRack.OfFileAsync();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/status");
        request.Headers.Host = host;

        using var answer = await served.Client.SendAsync(request);

        Assert.Equal(code, answer.StatusCode);
    }

    [Fact]
    public async Task WhatWasPassedOnIsNotFromThisMachine()
    {
        await using var served = await ServedRack.OfFileAsync();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/status");
        request.Headers.Add("X-Forwarded-For", "203.0.113.7");

        using var answer = await served.Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task OnceSomebodyIsSetUpItMovesToTheHouseAndBackWhenTheLastHasGone()
    {
        await using var served = await ServedRack.OfFileAsync(howServed: options => options with { Listen = everywhere });
        var before = served.Address;
        using (var guest = new Guest(before))
        {
            using var answer = await guest.PostAsync(
                "/people/first", ("name", "ada"), ("password", Household.Password), ("again", Household.Password));
            Assert.Contains("https://", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        await UntilAsync(() => served.Address != before);
        Assert.Equal("https", served.Address.Scheme);
        using (var guest = new Guest(AtThisMachine(served.Address)))
        {
            Assert.Equal(HttpStatusCode.SeeOther, await guest.GetAsync("/"));
            Assert.Equal(HttpStatusCode.SeeOther, await guest.SignInAsync("ada", Household.Password));
            Assert.Equal(HttpStatusCode.OK, await guest.GetAsync("/people"));
        }

        Assert.Null(new People(served.State).Remove("ada", mayBeLast: true));
        await UntilAsync(() => served.Address.Scheme == "http");
    }

    [Fact]
    public async Task ItsOwnCertificateIsShownOnThePageAndNamesThisMachine()
    {
        await using var served = await Household.ServedAsync(options => options with { Listen = everywhere });
        var address = AtThisMachine(served.Address);
        using var ada = new Guest(address);
        await ada.SignInAsync(Household.Ada, Household.Password);
        using var presented = await PresentedAsync(address);

        var print = string.Join(':', SHA256.HashData(presented.RawData).Select(part => $"{part:X2}"));
        Assert.Contains(print, WebUtility.HtmlDecode(await ada.Client.GetStringAsync("/people")), StringComparison.Ordinal);
        Assert.True(presented.MatchesHostname("localhost"));
        Assert.True(presented.MatchesHostname("127.0.0.1"));
        Assert.True(OwnerOnly.Reads(Path.Combine(served.State.Path, "certificate.pem")));
    }

    [Fact]
    public async Task TheCookieGoesByHttpsOnlyAndNoOtherHostSetsIt()
    {
        await using var served = await Household.ServedAsync(options => options with { Listen = everywhere });
        using var ada = new Guest(AtThisMachine(served.Address));
        using var answer = await ada.Client.PostAsync("/sign-in", Guest.Form(("name", "ada"), ("password", Household.Password)));

        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.StartsWith("__Host-session=", cookie, StringComparison.Ordinal);
        Assert.Contains("; secure", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("domain=", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.False(answer.Headers.Contains("Strict-Transport-Security"));
    }

    [Fact]
    public async Task PlainHttpIsToldToComeByHttps()
    {
        await using var served = await Household.ServedAsync(options => options with { Listen = everywhere });
        using var client = new HttpClient();

        using var answer = await client.GetAsync(new Uri($"http://127.0.0.1:{served.Address.Port}/"));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("by HTTPS only", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task AFileOfPeopleThatCannotBeReadLetsNobodyIn()
    {
        await using var served = await ServedRack.OfFileAsync(
            prepare: folder => File.WriteAllText(Path.Combine(folder.Path, "people.json"), "{\"people\": [{}]}"));
        using var guest = new Guest(served.Address);

        Assert.Equal(HttpStatusCode.SeeOther, await guest.GetAsync("/"));
        Assert.Contains("Nobody can sign in", await guest.Client.GetStringAsync("/sign-in"), StringComparison.Ordinal);
    }

    private static Uri AtThisMachine(Uri address) => new($"{address.Scheme}://127.0.0.1:{address.Port}/");

    private static async Task UntilAsync(Func<bool> isSo)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (!isSo())
        {
            await Task.Delay(50, patience.Token);
        }
    }

    private static async Task<X509Certificate2> PresentedAsync(Uri address)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(address.Host, address.Port);
        await using var stream = new System.Net.Security.SslStream(
            client.GetStream(), false, (_, certificate, _, _) => certificate is not null);
        await stream.AuthenticateAsClientAsync(address.Host);
        return new X509Certificate2(stream.RemoteCertificate!);
    }
}
