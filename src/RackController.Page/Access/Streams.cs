using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace RackController.Page;

/// <summary>An endpoint whose answers last until somebody goes.</summary>
internal sealed record LastingAnswer;

/// <summary>Says it of an endpoint.</summary>
internal static class LastingAnswerOfEndpoint
{
    public static T Lasting<T>(this T endpoint)
        where T : IEndpointConventionBuilder => endpoint.WithMetadata(new LastingAnswer());
}

/// <summary>Counts the answers that last, in all and for each address, and ends those of whoever is signed out meanwhile.</summary>
/// <param name="doorman">Knows who asks.</param>
internal sealed class Streams(Doorman doorman)
{
    /// <summary>More pages than a household has open.</summary>
    public const int MostInAll = 64;

    /// <summary>More pages than a household has open behind one address.</summary>
    public const int MostOfOneAddress = 32;

    private const string AnotherTrySeconds = "10";
    private static readonly TimeSpan lookEvery = TimeSpan.FromSeconds(2);

    private readonly Lock gate = new();
    private readonly Dictionary<IPAddress, int> open = [];
    private int all;

    /// <summary>Lets a request through, or answers it.</summary>
    /// <param name="context">The request; the doorman has let it in.</param>
    /// <param name="next">Whoever serves it.</param>
    public async Task AdmitAsync(HttpContext context, RequestDelegate next)
    {
        var metadata = context.GetEndpoint()?.Metadata;
        if (metadata?.GetMetadata<LastingAnswer>() is null)
        {
            await next(context).ConfigureAwait(false);
            return;
        }

        var address = AddressWords.Counted(context.Connection.RemoteIpAddress);
        if (!TryEnter(address))
        {
            context.Response.Headers.RetryAfter = AnotherTrySeconds;
            context.Response.Headers.Connection = "close";
            await Answer.SayAsync(context, StatusCodes.Status503ServiceUnavailable, "Too many pages follow already: close some.")
                .ConfigureAwait(false);
            return;
        }

        var asked = context.RequestAborted;
        using var until = CancellationTokenSource.CreateLinkedTokenSource(asked);
        context.RequestAborted = until.Token;
        try
        {
            var served = next(context);
            await WatchAsync(context, metadata.GetMetadata<Needs>()?.Role, served, until).ConfigureAwait(false);
            await served.ConfigureAwait(false);
        }
        finally
        {
            context.RequestAborted = asked;
            Leave(address);
        }
    }

    private async Task WatchAsync(HttpContext context, Role? role, Task served, CancellationTokenSource until)
    {
        while (!served.IsCompleted)
        {
            await Task.WhenAny(served, Task.Delay(lookEvery, until.Token)).ConfigureAwait(false);
            if (!until.IsCancellationRequested && !doorman.Recognise(context).May(role))
            {
                await until.CancelAsync().ConfigureAwait(false);
            }

            if (until.IsCancellationRequested)
            {
                return;
            }
        }
    }

    private bool TryEnter(IPAddress address)
    {
        lock (gate)
        {
            var ofIt = open.GetValueOrDefault(address);
            if (all >= MostInAll || ofIt >= MostOfOneAddress)
            {
                return false;
            }

            all++;
            open[address] = ofIt + 1;
            return true;
        }
    }

    private void Leave(IPAddress address)
    {
        lock (gate)
        {
            all--;
            if (--open[address] == 0)
            {
                open.Remove(address);
            }
        }
    }
}
