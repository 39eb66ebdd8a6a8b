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
}
