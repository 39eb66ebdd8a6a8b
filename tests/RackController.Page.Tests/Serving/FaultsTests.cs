using System.Net;

namespace RackController.Page.Tests;

public sealed class FaultsTests
{
    [Fact]
    public async Task WhatNobodyForesawIsOneLineAndTheRackIsDriven()
    {
        await using var served = await ServedRack.OfFileAsync();
        File.Delete(served.RackFile);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/schedule/draft")
        {
            Content = new FormUrlEncodedContent([new("text", "site: elsewhere"), new("form-token", await TokenAsync(served))]),
        };

        using var answer = await served.Client.SendAsync(request);
        var said = await answer.Content.ReadAsStringAsync();

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Single(said.TrimEnd().Split('\n'));
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Null((await served.SeeAsync(_ => true)).Health.Fault);
    }

    private static async Task<string> TokenAsync(ServedRack served)
    {
        var page = await served.Client.GetStringAsync("/schedule");
        const string Before = "name=\"form-token\" value=\"";
        var at = page.IndexOf(Before, StringComparison.Ordinal) + Before.Length;
        return page[at..page.IndexOf('"', at)];
    }
}
