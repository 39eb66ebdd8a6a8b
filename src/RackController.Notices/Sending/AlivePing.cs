using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices;

/// <summary>
/// Asks for an address while the controller gives signs of life, and withholds that when it does not, so that whoever is behind the address
/// calls when a board, its network or the controller is dead. By GET, which every such service takes; nothing is said but that all is well.
/// </summary>
/// <param name="plan">Where and how often.</param>
/// <param name="client">Who asks.</param>
internal sealed class AlivePing(AlivePlan plan, WebClient client)
{
    private static readonly Duration AgainAfter = Duration.FromMinutes(1);

    private Task<SendResult>? asking;
    private Instant? due;

    /// <summary>How it fares.</summary>
    public WayStatus Status { get; private set; } = new(plan.Name, null, null, null, 0);

    /// <summary>Takes up how it fared in an earlier process.</summary>
    /// <param name="earlier">How.</param>
    public void Restore(IEnumerable<WayStatus> earlier) => Status = earlier.FirstOrDefault(way => way.Name == Status.Name) ?? Status;

    /// <summary>Asks if it is time and all is well, and takes what came of it.</summary>
    /// <param name="isAlive">Whether the controller gives signs of life.</param>
    /// <param name="now">The time.</param>
    /// <param name="cancellation">Ends the request.</param>
    public void GoOn(bool isAlive, Instant now, CancellationToken cancellation)
    {
        if (asking is { IsCompleted: true } asked)
        {
            asking = null;
            if (!asked.IsCanceled)
            {
                Take(asked.IsFaulted ? SendResult.Of(asked.Exception.InnerException!) : asked.Result, now);
            }
        }

        // A wait longer than it can be was begun under another clock.
        if (isAlive && asking is null && (due is not { } at || now >= at || at - now > plan.Every))
        {
            due = now + plan.Every;
            asking = AskAsync(cancellation);
        }
    }

    /// <summary>Asks once, and says what came of it.</summary>
    /// <param name="cancellation">Ends it.</param>
    public async Task<SendResult> AskAsync(CancellationToken cancellation)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, plan.Address);
        return await client.AskAsync(request, cancellation).ConfigureAwait(false);
    }

    private void Take(SendResult result, Instant now)
    {
        if (result.Fault is { } fault)
        {
            due = now + Duration.Min(AgainAfter, plan.Every);
            Status = Status with { Fault = fault, FaultAt = now };
        }
        else
        {
            Status = Status with { LastSuccess = now, Fault = null, FaultAt = null };
        }
    }
}
