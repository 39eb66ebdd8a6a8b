using System.Text.RegularExpressions;

namespace RackController.Page.Tests;

public sealed partial class FirstViewTests
{
    private const int MostBytes = 60_000;

    [Fact]
    public async Task TheFirstViewIsLightEnoughForAWeakSignal()
    {
        await using var served = await ServedRack.OfFileAsync();
        var html = await served.Client.GetStringAsync("/");
        var bytes = System.Text.Encoding.UTF8.GetByteCount(html);
        foreach (Match file in Files().Matches(html))
        {
            bytes += (await served.Client.GetByteArrayAsync(file.Groups[1].Value)).Length;
        }

        Assert.InRange(bytes, 5_000, MostBytes);
    }

    [Fact]
    public async Task WhatIsSentIsPackedForWhoeverCanUnpackIt()
    {
        await using var served = await ServedRack.OfFileAsync();
        var plain = (await served.Client.GetByteArrayAsync("/")).Length;
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.AcceptEncoding.ParseAdd("gzip");
        using var answer = await served.Client.SendAsync(request);

        Assert.Equal("gzip", Assert.Single(answer.Content.Headers.ContentEncoding));
        Assert.InRange((await answer.Content.ReadAsByteArrayAsync()).Length, 500, plain / 2);
    }

    [Fact]
    public async Task NothingIsLoadedFromElsewhere()
    {
        await using var served = await ServedRack.OfFileAsync();

        var html = await served.Client.GetStringAsync("/");

        Assert.DoesNotContain("://", html.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [GeneratedRegex("(?:href|src)=\"(/files/[^\"]+)\"")]
    private static partial Regex Files();
}
