using NodaTime;
using RackController.Model;

namespace RackController.Notices.Tests;

public sealed class AlivePingTests : IDisposable
{
    private readonly WebClient client = new(TimeProvider.System, TimeSpan.FromSeconds(20));

    public void Dispose() => client.Dispose();

    [Fact]
    public async Task TheAddressIsAskedForWhileTheControllerLives()
    {
        await using var server = Loopback.Saying("HTTP/1.1 200 OK\r\nContent-Length: 0\r\n\r\n");
        Ping(server.Port).GoOn(isAlive: true, Cellar.Noon, CancellationToken.None);

        Assert.StartsWith("GET /alive HTTP/1.1\r\n", await server.Heard, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AFaultIsKeptAndTriedAgainWithinAMinute()
    {
        var ping = Ping(Loopback.FreePort());
        await FaultAsync(ping, Cellar.Noon);
        var first = ping.Status.FaultAt;
        Assert.Contains("cannot be reached", ping.Status.Fault, StringComparison.Ordinal);

        await FaultAsync(ping, Cellar.Noon + Duration.FromMinutes(1));
        Assert.True(ping.Status.FaultAt > first);
    }

    [Fact]
    public async Task ItIsWithheldWhileTheControllerIsSilent()
    {
        await using var server = Loopback.Saying("HTTP/1.1 200 OK\r\nContent-Length: 0\r\n\r\n");
        var ping = Ping(server.Port);
        for (var minutes = 0; minutes < 60; minutes++)
        {
            ping.GoOn(isAlive: false, Cellar.Noon + Duration.FromMinutes(minutes), CancellationToken.None);
        }

        Assert.Equal(new(ping.Status.Name, null, null, null, 0), ping.Status);
        Assert.False(server.Heard.IsCompleted);
    }

    // Looks again until what was asked has come back, whose time is the network's.
    private static async Task FaultAsync(AlivePing ping, Instant at)
    {
        var before = ping.Status;
        while (ping.Status == before)
        {
            ping.GoOn(isAlive: true, at, CancellationToken.None);
            await Task.Yield();
        }
    }

    private AlivePing Ping(int port) => new(new AlivePlan(new Uri($"http://127.0.0.1:{port}/alive"), Duration.FromMinutes(5)), client);
}
