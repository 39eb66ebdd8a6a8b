using System.Collections.Immutable;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Https;

namespace RackController.Page;

/// <summary>How the server listens, and what it takes of a connection at most.</summary>
internal static class Listening
{
    // Requests for the start and a picture of a large site are a few kilobytes, and a rack file is the largest that is sent.
    private const long MostBodyBytes = 256 * 1024;
    private const int MostHeaderBytes = 16 * 1024;
    private const int MostLineBytes = 4 * 1024;
    private const int MostHeaders = 64;
    private const double LeastBodyBytesPerS = 2000;
    private static readonly TimeSpan grace = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan headersWithin = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan idle = TimeSpan.FromSeconds(60);

    /// <summary>Sets it up.</summary>
    /// <param name="kestrel">The server.</param>
    /// <param name="spots">Where it listens.</param>
    /// <param name="chain">The certificate and those that it hangs on; empty where no place needs one.</param>
    public static void Configure(KestrelServerOptions kestrel, ImmutableArray<ListenSpot> spots, X509Certificate2Collection chain)
    {
        var connections = new Connections();
        kestrel.AddServerHeader = false;
        kestrel.Limits.MaxRequestBodySize = MostBodyBytes;
        kestrel.Limits.MaxRequestHeadersTotalSize = MostHeaderBytes;
        kestrel.Limits.MaxRequestHeaderCount = MostHeaders;
        kestrel.Limits.MaxRequestLineSize = MostLineBytes;
        kestrel.Limits.RequestHeadersTimeout = headersWithin;
        kestrel.Limits.KeepAliveTimeout = idle;
        kestrel.Limits.MinRequestBodyDataRate = new MinDataRate(LeastBodyBytesPerS, grace);
        foreach (var spot in spots)
        {
            if (spot.Socket is { } socket)
            {
                kestrel.ListenHandle((ulong)socket.Duplicate(), listen => Speak(listen, spot, chain, connections));
            }
            else
            {
                kestrel.Listen(spot.At, listen => Speak(listen, spot, chain, connections));
            }
        }
    }

    // HTTP/1.1 only: one request to a connection at a time, so a cap on connections is one on requests.
    private static void Speak(ListenOptions listen, ListenSpot spot, X509Certificate2Collection chain, Connections connections)
    {
        listen.Protocols = HttpProtocols.Http1;
        listen.Use(connections.Before);
        if (!spot.IsSecure)
        {
            return;
        }

        listen.Use(PlainGreeting.Before);
        listen.UseHttps(new HttpsConnectionAdapterOptions
        {
            ServerCertificate = chain[0],
            ServerCertificateChain = [.. chain.Skip(1)],
            SslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13,
        });
    }
}
