using Microsoft.AspNetCore.Connections;

namespace RackController.Page;

/// <summary>Answers whoever speaks plain HTTP where HTTPS is spoken, in place of a silence that tells nobody anything.</summary>
internal static class PlainGreeting
{
    // How every TLS connection begins (RFC 8446, record of a handshake).
    private const byte Handshake = 22;
    private static readonly TimeSpan patience = TimeSpan.FromSeconds(10);

    private static readonly byte[] answer = [.. """
        HTTP/1.1 400 Bad Request
        Content-Type: text/plain; charset=utf-8
        Content-Length: 66
        Connection: close

        This page is served by HTTPS only: begin its address with https.

        """.ReplaceLineEndings("\r\n").Select(letter => (byte)letter)];

    /// <summary>Looks at the first byte of a connection.</summary>
    public static ConnectionDelegate Before(ConnectionDelegate next) => async connection =>
    {
        using var until = CancellationTokenSource.CreateLinkedTokenSource(connection.ConnectionClosed);
        until.CancelAfter(patience);
        try
        {
            var first = await connection.Transport.Input.ReadAsync(until.Token).ConfigureAwait(false);
            var isPlain = !first.Buffer.IsEmpty && first.Buffer.FirstSpan[0] != Handshake;
            var isNothing = first.Buffer.IsEmpty;
            connection.Transport.Input.AdvanceTo(first.Buffer.Start);
            if (isNothing)
            {
                return;
            }

            if (isPlain)
            {
                await connection.Transport.Output.WriteAsync(answer, until.Token).ConfigureAwait(false);
                await connection.Transport.Output.CompleteAsync().ConfigureAwait(false);
                return;
            }
        }
        catch (Exception e) when (e is OperationCanceledException or IOException)
        {
            // Nothing came, or nobody is there any more.
            connection.Abort();
            return;
        }

        await next(connection).ConfigureAwait(false);
    };
}
