using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// When one load was told to be on over a span. A load that was switched too often to be told apart at this length is one stretch, so
/// that there are never more than <see cref="SensorTrend.MostPoints"/>. While the controller did not run, a load had its safe state, as
/// far as its circuit had power.
/// </summary>
/// <param name="Load">The load's name.</param>
/// <param name="On">When it was on, oldest first.</param>
public sealed record LoadTimes(string Load, ImmutableArray<HistorySpan> On)
{
    // Whoever was not switched in so many switchings of loads is as a start finds it.
    private const int MostLookedBack = 5_000;

    /// <summary>Finds the times of some loads.</summary>
    /// <param name="newestFirst">Every switching of loads, newest first.</param>
    /// <param name="loads">The loads.</param>
    /// <param name="span">The span, which ends now or earlier.</param>
    /// <param name="begins">When the record begins, before which nothing is known; null where it is older than the span.</param>
    public static ImmutableArray<LoadTimes> Of(
        IEnumerable<KeptEvent> newestFirst, IReadOnlyList<Load> loads, HistorySpan span, Instant? begins = null)
    {
        ArgumentNullException.ThrowIfNull(newestFirst);
        ArgumentNullException.ThrowIfNull(loads);
        var walks = loads.ToDictionary(load => load.Name, load => new Walk(load, span));
        var lookedBack = 0;
        long? run = null;
        foreach (var kept in newestFirst)
        {
            if (run is { } later && later != kept.Run)
            {
                foreach (var walk in walks.Values)
                {
                    walk.PassStart(kept.Event.At.Wall);
                }
            }

            run = kept.Run;
            if (walks.TryGetValue(kept.Event.Subject, out var its))
            {
                its.Pass(kept.Event.At.Wall, isOn: kept.Event.What == "on");
            }

            lookedBack += kept.Event.At.Wall < span.From ? 1 : 0;
            if (lookedBack > MostLookedBack || walks.Values.All(walk => walk.IsThrough))
            {
                break;
            }
        }

        return [.. walks.Select(walk => new LoadTimes(walk.Key, walk.Value.Found(Instant.Max(begins ?? span.From, span.From))))];
    }

    /// <summary>One load, followed from the end of a span to its beginning.</summary>
    private sealed class Walk(Load load, HistorySpan span)
    {
        private readonly Duration shortest = span.Length / SensorTrend.MostPoints;
        private readonly List<HistorySpan> on = [];
        private Instant known = span.Until;

        public bool IsThrough => known <= span.From;

        /// <summary>It was switched.</summary>
        public void Pass(Instant at, bool isOn)
        {
            if (isOn)
            {
                Add(at);
            }

            known = Instant.Min(known, at);
        }

        /// <summary>The controller started between what was looked at before and a last event of the run before that.</summary>
        public void PassStart(Instant lastBefore)
        {
            if (load.SafeState == SwitchState.On)
            {
                Add(lastBefore);
            }

            known = Instant.Min(known, lastBefore);
        }

        public ImmutableArray<HistorySpan> Found(Instant begins)
        {
            if (!IsThrough && load.SafeState == SwitchState.On)
            {
                Add(begins);
            }

            on.Reverse();
            return [.. on];
        }

        private void Add(Instant since)
        {
            var from = Instant.Max(since, span.From);
            if (from >= known)
            {
                return;
            }

            var isClose = on.Count > 0 && on[^1].From - known < shortest;
            if (isClose)
            {
                on[^1] = on[^1] with { From = from };
            }
            else
            {
                on.Add(new HistorySpan(from, known));
            }
        }
    }
}
