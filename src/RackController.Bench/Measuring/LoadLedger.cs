using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Keeps count of how long each load was really powered. Between two observations a load stays as the first
/// of them saw it, because relays move only at scans.</summary>
internal sealed class LoadLedger(Site site)
{
    private readonly bool[] wasPowered = new bool[site.Loads.Length];
    private readonly Duration[] unbroken = new Duration[site.Loads.Length];
    private readonly Duration[] today = new Duration[site.Loads.Length];
    private readonly Duration[] total = new Duration[site.Loads.Length];
    private readonly int[] switchedOn = new int[site.Loads.Length];

    /// <summary>The unbroken run that goes on, or that has ended just now.</summary>
    public Duration Unbroken(LoadId load) => unbroken[load.Index];

    /// <summary>How long each load has been powered, by load.</summary>
    public ImmutableArray<Duration> Total => [.. total];

    /// <summary>How often each load came on, by load.</summary>
    public ImmutableArray<int> SwitchedOn => [.. switchedOn];

    /// <summary>Takes the time since the observation before.</summary>
    public void CountUpTo(Duration sinceBefore)
    {
        for (var i = 0; i < wasPowered.Length; i++)
        {
            if (wasPowered[i])
            {
                unbroken[i] += sinceBefore;
                today[i] += sinceBefore;
                total[i] += sinceBefore;
            }
            else
            {
                unbroken[i] = Duration.Zero;
            }
        }
    }

    /// <summary>Takes the state that holds from now on.</summary>
    public void Note(LoadId load, bool isPowered)
    {
        switchedOn[load.Index] += isPowered && !wasPowered[load.Index] ? 1 : 0;
        wasPowered[load.Index] = isPowered;
    }

    /// <summary>Hands over what the day came to and begins a new one.</summary>
    public ImmutableArray<Duration> CloseDay()
    {
        var day = ImmutableArray.Create(today);
        Array.Clear(today);
        return day;
    }
}
