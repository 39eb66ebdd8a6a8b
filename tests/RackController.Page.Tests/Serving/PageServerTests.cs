using System.Net.Sockets;
using System.Text;

namespace RackController.Page.Tests;

public sealed class PageServerTests
{
    /// <summary>A request may be what brings the end about, as putting a rack file in place does: its answer must not be lost.</summary>
    [Fact]
    public async Task WhoAskedBeforeTheEndIsAnswered()
    {
        await using var served = await ServedRack.OfFileAsync();
        using var asking = await ConnectedAsync(served.Address);
        await SendAsync(asking, "POST /api/ask HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2\r\nConnection: close\r\n\r\n");

        var end = served.EndAsync();
        while (await IsListenedAtAsync(served.Address))
        {
            await Task.Delay(5);
        }

        await SendAsync(asking, "no");

        using var answer = new StreamReader(new NetworkStream(asking));
        Assert.StartsWith("HTTP/1.1 400", await answer.ReadToEndAsync(), StringComparison.Ordinal);
        await end;
    }

    private static async Task SendAsync(Socket socket, string text) => await socket.SendAsync(Encoding.ASCII.GetBytes(text));

    private static async Task<Socket> ConnectedAsync(Uri address)
    {
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
        await socket.ConnectAsync(address.Host, address.Port);
        return socket;
    }

    private static async Task<bool> IsListenedAtAsync(Uri address)
    {
        try
        {
            using var socket = await ConnectedAsync(address);
            return true;
        }
        catch (SocketException e) when (e.SocketErrorCode == SocketError.ConnectionRefused)
        {
            return false;
        }
    }
}
