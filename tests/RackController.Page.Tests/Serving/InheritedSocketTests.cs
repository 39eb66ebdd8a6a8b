using System.Net;
using System.Net.Sockets;

namespace RackController.Page.Tests;

/// <summary>Sockets that a supervisor opened and handed over.</summary>
public sealed class InheritedSocketTests
{
    [Fact]
    public async Task ThePageIsServedOnWhatWasHandedOverAndTheSocketStaysOpen()
    {
        using var page = Listen(IPAddress.Loopback);
        var at = (IPEndPoint)page.LocalEndPoint!;
        await using (var served = await ServedRack.OfFileAsync(howServed: options => options with { Sockets = [Of(page)] }))
        {
            Assert.Equal(at.Port, served.Address.Port);
            Assert.Equal("answers\n", await served.Client.GetStringAsync("/health/live"));
        }

        await using var again = await ServedRack.OfFileAsync(howServed: options => options with { Sockets = [Of(page)] });
        Assert.Equal("answers\n", await again.Client.GetStringAsync("/health/live"));
    }

    [Fact]
    public async Task TheHouseIsServedByHttpsOnceSomebodyIsSetUpAndNotBefore()
    {
        using var page = Listen(IPAddress.Loopback);
        using var network = Listen(IPAddress.Any);
        var house = new Uri($"https://127.0.0.1:{((IPEndPoint)network.LocalEndPoint!).Port}/");
        await using var served = await ServedRack.OfFileAsync(howServed: options => options with { Sockets = [Of(page), Of(network)] });
        using var guest = new Guest(house);
        var waiting = guest.GetAsync("/sign-in");
        Assert.Equal("answers\n", await served.Client.GetStringAsync("/health/live"));
        Assert.False(waiting.IsCompleted);

        Household.MoveIn(served.State);

        Assert.Equal(HttpStatusCode.OK, await waiting.WaitAsync(TimeSpan.FromSeconds(30)));
        Assert.Equal("answers\n", await served.Client.GetStringAsync("/health/live"));
    }

    [Fact]
    public void WithoutOneThatIsForThisMachineNothingIsListenedAtBeforeTheFirstPerson()
    {
        var house = new InheritedSocket(99, new IPEndPoint(IPAddress.IPv6Any, 8475));
        var options = new PageOptions(new IPEndPoint(IPAddress.Loopback, 8474), "", new Service.StateFolder(""), 1) { Sockets = [house] };

        Assert.Empty(ListenPlan.Of(options, isAnybodyKnown: false));
        Assert.True(Assert.Single(ListenPlan.Of(options, isAnybodyKnown: true)).IsSecure);
    }

    private static Socket Listen(IPAddress address)
    {
        var socket = new Socket(address.AddressFamily, SocketType.Stream, ProtocolType.Tcp);
        socket.Bind(new IPEndPoint(address, 0));
        socket.Listen();
        return socket;
    }

    private static InheritedSocket Of(Socket socket) => new((int)socket.Handle, (IPEndPoint)socket.LocalEndPoint!);
}
