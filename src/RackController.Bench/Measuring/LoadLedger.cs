using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Keeps count of how long each load was really powered. Between two observations a load stays as the first
/// of them saw it, because relays move only at scans.</summary>
internal sealed class LoadLedger(Site site)
{
    private readonly Run[] runs = new Run[site.Loads.Length];
    private Duration now;

    /// <summary>When a load last came on, whichever, as time since the run began; null before any did.</summary>
    public Duration? LastCameOn { get; private set; }

    /// <summary>The unbroken run that goes on, or that has ended just now.</summary>
    public Duration Unbroken(LoadId load)
    {
        ref readonly var run = ref runs[load.Index];
        return run.IsOn ? now - run.From : run.Until == now ? run.Until - run.From : Duration.Zero;
    }

    /// <summary>How long each load has been powered, by load.</summary>
    public ImmutableArray<Duration> Total => [.. runs.Select(run => run.TotalAt(now))];

    /// <summary>How often each load came on, by load.</summary>
    public ImmutableArray<int> SwitchedOn => [.. runs.Select(run => run.Times)];

    /// <summary>Moves on to an observation.</summary>
    /// <param name="elapsed">Time since the run began.</param>
    public void MoveTo(Duration elapsed) => now = elapsed;

    /// <summary>Takes the state that holds from now on.</summary>
    public void Note(LoadId load, bool isPowered)
    {
        ref var run = ref runs[load.Index];
        if (isPowered == run.IsOn)
        {
            return;
        }

        if (isPowered)
        {
            run.From = now;
            LastCameOn = now;
            run.Times++;
        }
        else
        {
            run.Until = now;
            run.Ended += now - run.From;
        }

        run.IsOn = isPowered;
    }

    /// <summary>Hands over what the day came to and begins a new one.</summary>
    public ImmutableArray<Duration> CloseDay()
    {
        var day = ImmutableArray.CreateBuilder<Duration>(runs.Length);
        for (var i = 0; i < runs.Length; i++)
        {
            var total = runs[i].TotalAt(now);
            day.Add(total - runs[i].TotalAtMidnight);
            runs[i].TotalAtMidnight = total;
        }

        return day.MoveToImmutable();
    }

    private struct Run
    {
        public bool IsOn;
        public int Times;
        public Duration From;
        public Duration Until;
        public Duration Ended;
        public Duration TotalAtMidnight;

        public readonly Duration TotalAt(Duration now) => IsOn ? Ended + (now - From) : Ended;
    }
}
