using Microsoft.AspNetCore.Http;
using RackController.Service;

namespace RackController.Page;

/// <summary>A picture of the rack for one request. A scan that hangs gives none, and nobody waits for it forever.</summary>
internal static class Patience
{
    private static readonly TimeSpan longest = TimeSpan.FromSeconds(5);

    /// <summary>Looks at the rack.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="context">Who waits.</param>
    /// <param name="within">How long at most; five seconds without it.</param>
    /// <exception cref="SilentRackException">No scan ended in that time.</exception>
    public static async Task<SiteStatus> LookAsync(this IServedRack rack, HttpContext context, TimeSpan? within = null)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
        patience.CancelAfter(within ?? longest);
        try
        {
            return await rack.LookAsync(patience.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException e) when (!context.RequestAborted.IsCancellationRequested)
        {
            throw new SilentRackException(
                $"The controller has not looked at its racks for {(within ?? longest).TotalSeconds:0} s, so nothing can be shown. A "
                + "stop that was asked for waits for it. If it hangs, its watchdog ends it, every load goes to rest, and it starts anew: "
                + "look again in a moment, and go to the rack if this stays.",
                e);
        }
    }
}

/// <summary>Nobody has looked at the racks for longer than somebody should wait for.</summary>
/// <param name="message">What to tell who waited.</param>
/// <param name="inner">How it showed.</param>
internal sealed class SilentRackException(string message, Exception inner) : Exception(message, inner);
