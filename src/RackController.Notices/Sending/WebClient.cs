using System.Net;
using System.Net.Sockets;
using System.Security.Authentication;
using NodaTime;

namespace RackController.Notices;

/// <summary>Asks for web addresses: never for long, never through anything in between, and never past a certificate that is wrong. What
/// comes back is not read beyond its headers.</summary>
internal sealed class WebClient : IDisposable
{
    private readonly HttpClient client;
    private readonly TimeProvider time;
    private readonly TimeSpan patience;

    /// <summary>Makes one.</summary>
    /// <param name="time">The clock that a date to try again at is held against.</param>
    /// <param name="patience">How long one request may take.</param>
    public WebClient(TimeProvider time, TimeSpan patience)
    {
        this.time = time;
        this.patience = patience;
        var handler = new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            UseProxy = false,
            UseCookies = false,
            MaxResponseHeadersLength = 16,

            // A name may move to another address while this runs for months.
            PooledConnectionLifetime = TimeSpan.FromMinutes(1),
        };
        client = new HttpClient(handler) { Timeout = Timeout.InfiniteTimeSpan };
        client.DefaultRequestHeaders.UserAgent.ParseAdd("RackController");
    }

    /// <summary>Asks.</summary>
    /// <param name="request">What for.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <returns>What came of it.</returns>
    /// <exception cref="OperationCanceledException">It was ended from outside.</exception>
    public async Task<SendResult> AskAsync(HttpRequestMessage request, CancellationToken cancellation)
    {
        var host = request.RequestUri!.Authority;
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(patience);
        try
        {
            using var response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, limit.Token)
                .ConfigureAwait(false);
            return ResultOf(response, host);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return SendResult.Failed($"{host} did not answer within {patience.TotalSeconds:0} s");
        }
        catch (HttpRequestException e)
        {
            return SendResult.Failed(Words(e, host));
        }
        catch (IOException e)
        {
            return SendResult.Failed($"{host} broke the connection off: {OneLine(e)}");
        }
    }

    /// <summary>Lets go of its connections.</summary>
    public void Dispose() => client.Dispose();

    private SendResult ResultOf(HttpResponseMessage response, string host)
    {
        if (response.IsSuccessStatusCode)
        {
            return SendResult.Sent;
        }

        var fault = $"{host} answers {(int)response.StatusCode}{(response.ReasonPhrase is { Length: > 0 } said ? $" {said}" : "")}";
        return response.StatusCode switch
        {
            HttpStatusCode.RequestTimeout or (HttpStatusCode)425 or HttpStatusCode.TooManyRequests or >= HttpStatusCode.InternalServerError
                => SendResult.Failed(fault, RetryAfterOf(response)),
            >= HttpStatusCode.MultipleChoices and < HttpStatusCode.BadRequest =>
                SendResult.Refused($"{fault}: it has moved; write the address where it is now"),
            _ => SendResult.Refused(fault),
        };
    }

    private Duration? RetryAfterOf(HttpResponseMessage response) => response.Headers.RetryAfter switch
    {
        { Delta: { } pause } => Duration.FromTimeSpan(pause),
        { Date: { } date } => Duration.FromTimeSpan(date - time.GetUtcNow()),
        _ => null,
    };

    private static string Words(HttpRequestException e, string host) => e.HttpRequestError switch
    {
        HttpRequestError.NameResolutionError => $"the name {host} cannot be resolved",
        HttpRequestError.SecureConnectionError => e.InnerException is AuthenticationException
            ? $"{host} shows no certificate that can be trusted"
            : $"{host} does not speak TLS",
        HttpRequestError.ConnectionError => $"{host} cannot be reached: {OneLine(e.InnerException as SocketException ?? (Exception)e)}",
        _ => $"{host} does not answer as a web server does: {OneLine(e)}",
    };

    private static string OneLine(Exception e) => e.Message.ReplaceLineEndings(" ").Trim().TrimEnd('.');
}
