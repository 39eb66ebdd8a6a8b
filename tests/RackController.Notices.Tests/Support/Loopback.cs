using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace RackController.Notices.Tests;

/// <summary>A server on this machine that says what a test wants it to, whatever it is asked, and keeps what it heard.</summary>
internal sealed class Loopback : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource end = new();
    private readonly Task serving;
    private readonly TaskCompletionSource<string> heard = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private Loopback(Func<Stream, TaskCompletionSource<string>, CancellationToken, Task> serve)
    {
        listener.Start();
        serving = ServeAsync(serve);
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    /// <summary>What the first request said.</summary>
    public Task<string> Heard => heard.Task.WaitAsync(TimeSpan.FromSeconds(20));

    /// <summary>Answers a request over HTTP with a text.</summary>
    public static Loopback Saying(string answer) => new(async (stream, heard, end) =>
    {
        heard.TrySetResult(await RequestAsync(stream, end));
        await stream.WriteAsync(Encoding.ASCII.GetBytes(answer), end);
    });

    /// <summary>Takes connections and never says a word.</summary>
    public static Loopback Mute() => new((_, _, end) => Task.Delay(Timeout.Infinite, end));

    /// <summary>Says a line at once, to whoever comes.</summary>
    public static Loopback Greeting(string line) => new((stream, _, end) => stream.WriteAsync(Encoding.ASCII.GetBytes(line), end).AsTask());

    /// <summary>Says a line at once, and the next after each that it hears.</summary>
    public static Loopback Conversing(params string[] lines) => new(async (stream, _, end) =>
    {
        using var reader = new StreamReader(stream, leaveOpen: true);
        foreach (var line in lines)
        {
            await stream.WriteAsync(Encoding.ASCII.GetBytes(line), end);
            await reader.ReadLineAsync(end);
        }
    });

    /// <summary>Speaks TLS with a certificate that nobody has reason to trust.</summary>
    public static Loopback WithOwnCertificate() => new(async (stream, heard, end) =>
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var certificate = new CertificateRequest("CN=127.0.0.1", key, HashAlgorithmName.SHA256)
            .CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        await using var secure = new SslStream(stream);
        await secure.AuthenticateAsServerAsync(new SslServerAuthenticationOptions { ServerCertificate = certificate }, end);
        heard.TrySetResult(await RequestAsync(secure, end));
    });

    /// <summary>A port at which nobody listens.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public async ValueTask DisposeAsync()
    {
        await end.CancelAsync();
        await serving;
        listener.Stop();
        end.Dispose();
    }

    private static async Task<string> RequestAsync(Stream stream, CancellationToken end)
    {
        var (buffer, text) = (new byte[16_384], "");
        while (!IsWhole(text))
        {
            var length = await stream.ReadAsync(buffer, end);
            if (length == 0)
            {
                break;
            }

            text += Encoding.UTF8.GetString(buffer, 0, length);
        }

        return text;
    }

    private static bool IsWhole(string text)
    {
        var body = text.IndexOf("\r\n\r\n", StringComparison.Ordinal);
        var length = text.Split("\r\n").FirstOrDefault(line => line.StartsWith("Content-Length: ", StringComparison.OrdinalIgnoreCase));
        return body >= 0 && Encoding.UTF8.GetByteCount(text[(body + 4)..]) >= int.Parse(length?.Split(' ')[1] ?? "0");
    }

    private async Task ServeAsync(Func<Stream, TaskCompletionSource<string>, CancellationToken, Task> serve)
    {
        try
        {
            while (true)
            {
                using var client = await listener.AcceptTcpClientAsync(end.Token);
                await using var stream = client.GetStream();
                await serve(stream, heard, end.Token);
            }
        }
        catch (Exception e) when (e is OperationCanceledException or SocketException or IOException
            or System.Security.Authentication.AuthenticationException)
        {
            // The test is over, or whoever asked has gone: then nothing more is asked either.
            heard.TrySetException(new IOException("whoever asked has gone", e));
        }
    }
}
