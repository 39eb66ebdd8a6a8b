using System.Net;
using System.Net.Sockets;
using System.Text;

namespace RackController.Page.Tests;

/// <summary>Somebody sends too much, too slowly, or too many at once.</summary>
public sealed class FloodOfRequestsTests : IAsyncLifetime
{
    private static readonly TimeSpan patience = TimeSpan.FromMinutes(1);
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await Household.ServedAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [InlineData("/sign-in", "application/x-www-form-urlencoded")]
    [InlineData("/racks/0/skip", "application/x-www-form-urlencoded")]
    [InlineData("/sign-in", "multipart/form-data; boundary=x")]
    public async Task ABodyThatIsTooLargeIsRefused(string address, string type)
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        using var content = new ByteArrayContent(new byte[1_000_000]);
        content.Headers.TryAddWithoutValidation("Content-Type", type);

        // Asks before it sends, since whoever is refused in the midst of sending may not read the answer.
        using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = content };
        request.Headers.ExpectContinue = true;
        using var answer = await ada.Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Theory]
    [InlineData("GET / HTTP/1.1\r\nHost: localhost\r\nX-Slow: ")]
    [InlineData(
        "POST /sign-in HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-www-form-urlencoded\r\n"
        + "Content-Length: 1000\r\n\r\nname=")]
    public async Task WhoSendsALetterASecondIsLeft(string beginning)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(served.Address.Host, served.Address.Port);
        var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(beginning));
        using var end = new CancellationTokenSource(patience);
        var drip = DripAsync(stream, end.Token);

        // The answer, if there is one, and then the end of the connection.
        var buffer = new byte[4096];
        try
        {
            while (await stream.ReadAsync(buffer, end.Token) > 0)
            {
                Assert.False(end.IsCancellationRequested);
            }
        }
        catch (IOException e)
        {
            Assert.IsType<SocketException>(e.InnerException);
        }

        await end.CancelAsync();
        await drip;
    }

    [Fact]
    public async Task AThousandStreamsKeepNoStopAway()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        var streams = new List<TcpClient>();
        var request = Encoding.ASCII.GetBytes(
            $"GET /api/events HTTP/1.1\r\nHost: localhost\r\nCookie: session={ada.Cookie}\r\n\r\n");
        for (var i = 0; i < 1000; i++)
        {
            var client = new TcpClient();
            await client.ConnectAsync(served.Address.Host, served.Address.Port);
            await client.GetStream().WriteAsync(request);
            streams.Add(client);
        }

        using var guest = new Guest(served.Address);
        using var stop = await guest.Client.PostAsync("/stop", null);
        await served.SeeAsync(status => status.Asked[0].IsStopped);
        using var end = new CancellationTokenSource(patience);
        while (streams.Count(IsOpen) > Connections.MostOfOneAddress)
        {
            await Task.Delay(100, end.Token);
        }

        streams.ForEach(client => client.Dispose());
    }

    [Fact]
    public async Task OneAddressFollowsFromSoManyPagesAndNoMore()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        var answers = new List<HttpResponseMessage>();
        for (var i = 0; i < Streams.MostOfOneAddress + 4; i++)
        {
            answers.Add(await ada.Client.GetAsync(i % 2 == 0 ? "/live" : "/api/events", HttpCompletionOption.ResponseHeadersRead));
        }

        Assert.Equal(Streams.MostOfOneAddress, answers.Count(answer => answer.StatusCode == HttpStatusCode.OK));
        Assert.Equal(4, answers.Count(answer => answer.StatusCode == HttpStatusCode.ServiceUnavailable));
        answers.ForEach(answer => answer.Dispose());
    }

    [Fact]
    public async Task AStreamEndsWithItsSession()
    {
        using var ada = await Household.GuestAsync(served, Household.Ada);
        using var stream = await ada.Client.GetStreamAsync("/api/events");
        using var other = await Household.GuestAsync(served, Household.Ada);

        using var answer = await other.PostAsync("/account/end-all-sessions");

        using var reader = new StreamReader(stream);
        string? line;
        do
        {
            line = await reader.ReadLineAsync().WaitAsync(patience);
        }
        while (line is not null);

        Assert.Equal(HttpStatusCode.SeeOther, await ada.GetAsync("/"));
    }

    [Fact]
    public async Task TooManyRequestsAreTurnedAwayAndAStopIsNot()
    {
        using var guest = new Guest(served.Address);
        var codes = new List<HttpStatusCode>();
        for (var i = 0; i < RequestPace.AtOnce * 4 && !codes.Contains(HttpStatusCode.TooManyRequests); i++)
        {
            codes.AddRange(await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => guest.GetAsync("/health/live"))));
        }

        Assert.Contains(HttpStatusCode.TooManyRequests, codes);
        using var stop = await guest.Client.PostAsync("/stop", null);
        Assert.Equal(HttpStatusCode.SeeOther, stop.StatusCode);
    }

    private static bool IsOpen(TcpClient client)
    {
        try
        {
            var read = new byte[65536];
            while (client.Client.Poll(0, SelectMode.SelectRead))
            {
                if (client.Client.Receive(read) == 0)
                {
                    return false;
                }
            }

            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private static async Task DripAsync(NetworkStream stream, CancellationToken end)
    {
        try
        {
            while (true)
            {
                await Task.Delay(TimeSpan.FromSeconds(1), end);
                await stream.WriteAsync("x"u8.ToArray(), end);
            }
        }
        catch (Exception e) when (e is IOException or OperationCanceledException)
        {
            Assert.NotNull(e.Message);
        }
    }
}
