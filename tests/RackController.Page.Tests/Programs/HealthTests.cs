using System.Net;

namespace RackController.Page.Tests;

public sealed class HealthTests
{
    [Fact]
    public async Task AServiceThatScansIsReady()
    {
        await using var served = await ServedRack.OfFileAsync();

        Assert.Equal(HttpStatusCode.OK, (await served.Client.GetAsync("/health/live")).StatusCode);
        Assert.Equal("scans are good\n", await served.Client.GetStringAsync("/health/ready"));
    }

    [Theory]
    [InlineData("HEAD", "/health/ready", HttpStatusCode.OK)]
    [InlineData("HEAD", "/health/live", HttpStatusCode.OK)]
    [InlineData("HEAD", "/metrics", HttpStatusCode.MethodNotAllowed)]
    [InlineData("PUT", "/stop", HttpStatusCode.MethodNotAllowed)]
    public async Task WhoAsksForTheHeadersAloneIsAnsweredAndWhoAsksInAnotherWayIsTold(string method, string address, HttpStatusCode code)
    {
        await using var served = await ServedRack.OfFileAsync();
        using var request = new HttpRequestMessage(new HttpMethod(method), address);
        using var answer = await served.Client.SendAsync(request);

        Assert.Equal(code, answer.StatusCode);
    }
}
