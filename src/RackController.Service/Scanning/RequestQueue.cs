using System.Collections.Concurrent;
using RackController.Control;

namespace RackController.Service;

/// <summary>What people ask for, from any thread, until the next scan takes it.</summary>
internal sealed class RequestQueue
{
    /// <summary>More than people can ask for between two scans; a flood of requests must not become a flood of work.</summary>
    private const int Most = 64;

    private readonly ConcurrentQueue<OperatorRequest> waiting = new();
    private readonly OperatorRequest[] taken = new OperatorRequest[Most];

    /// <summary>Puts a request in the queue. A stop is always taken.</summary>
    /// <param name="request">What is asked.</param>
    /// <returns>Whether it was taken; not when too many wait already.</returns>
    public bool TryAdd(OperatorRequest request)
    {
        if (request is not Stop && waiting.Count >= Most)
        {
            return false;
        }

        waiting.Enqueue(request);
        return true;
    }

    /// <summary>Takes what waits, oldest first. The span is valid until the next call; only the scan thread calls this.</summary>
    public ReadOnlySpan<OperatorRequest> TakeAll()
    {
        var count = 0;
        while (count < Most && waiting.TryDequeue(out var request))
        {
            taken[count++] = request;
        }

        return taken.AsSpan(0, count);
    }
}
