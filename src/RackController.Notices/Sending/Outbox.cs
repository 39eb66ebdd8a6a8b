using NodaTime;
using RackController.Service;

namespace RackController.Notices;

/// <summary>
/// The messages of one way, oldest first, one on its way at a time, so that a server that hangs holds up nobody else. A message leaves when
/// it got through, was refused for good, or is three days old; until then it is kept and tried again.
/// </summary>
/// <param name="way">The way.</param>
internal sealed class Outbox(IWay way)
{
    /// <summary>More than this and the oldest go: whoever is told a hundred things at once reads none.</summary>
    public const int Most = 100;

    private readonly List<Letter> waiting = [];
    private (Letter Letter, Task<SendResult> Result)? sending;
    private WayStatus status = new(way.Name, null, null, null, 0);

    /// <summary>The way.</summary>
    public IWay Way => way;

    /// <summary>What waits.</summary>
    public IReadOnlyList<Letter> Waiting => waiting;

    /// <summary>How it fares.</summary>
    public WayStatus Status => status with { Waiting = waiting.Count };

    /// <summary>Takes up what an earlier process left.</summary>
    /// <param name="kept">What it kept.</param>
    public void Restore(Kept kept)
    {
        waiting.AddRange(kept.Outbox.Where(letter => letter.Way == way.Name));
        status = kept.Ways.FirstOrDefault(known => known.Name == way.Name) ?? status;
    }

    /// <summary>Adds a message.</summary>
    /// <param name="letter">The message.</param>
    /// <param name="now">The time.</param>
    public void Add(Letter letter, Instant now)
    {
        waiting.Add(letter);
        if (waiting.Count > Most)
        {
            waiting.RemoveAll(old => old == waiting.First(each => each != sending?.Letter));
            status = status with { Fault = $"so much waits that the oldest messages were let go ({status.Fault})", FaultAt = now };
        }
    }

    /// <summary>Takes what came of the message that was on its way.</summary>
    /// <param name="now">The time.</param>
    /// <returns>What did not get through for good, and why; null where nothing is lost.</returns>
    public (Letter Letter, string Fault)? Take(Instant now)
    {
        if (sending is not ({ } letter, { IsCompleted: true } task))
        {
            return null;
        }

        sending = null;
        if (task.IsCanceled)
        {
            // Whoever goes on from here sends it again, under the same id.
            return null;
        }

        var result = task.IsCompletedSuccessfully ? task.Result : SendResult.Of(task.Exception!.InnerException!);
        var place = waiting.IndexOf(letter);
        if (result.Fault is not { } fault)
        {
            waiting.RemoveAt(place);
            status = status with { LastSuccess = now, Fault = null, FaultAt = null };
            return null;
        }

        status = status with { Fault = fault, FaultAt = now };
        if (result.IsFinal || now - letter.MadeAt > RetryPlan.GiveUpAfter)
        {
            waiting.RemoveAt(place);
            return (letter, result.IsFinal ? fault : $"given up after {RetryPlan.GiveUpAfter.Days} days; {fault}");
        }

        var tries = letter.Tries + 1;
        waiting[place] = letter with { Tries = tries, NextTry = now + RetryPlan.PauseAfter(tries, result.RetryAfter) };
        return null;
    }

    /// <summary>Sends the next that is due, unless one is on its way.</summary>
    /// <param name="now">The time.</param>
    /// <param name="cancellation">Ends it.</param>
    public void SendNext(Instant now, CancellationToken cancellation)
    {
        // In order: after one that failed none goes before it is tried again, or an alarm would be over before it was raised.
        if (sending is null && waiting is [var next, ..] && RetryPlan.IsDue(next, now))
        {
            sending = (next, way.SendAsync(next, cancellation));
        }
    }

    /// <summary>Waits for the message that is on its way, after it was told to end.</summary>
    public Task EndAsync() => sending is { } underway ? Task.WhenAny(underway.Result) : Task.CompletedTask;

}
