using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>
/// One way in which one sort of part is known to fail: what a campaign injects, and what a proof test would find. It is no
/// fault yet: where, when, for how long and how much are drawn.
/// </summary>
/// <param name="Id">Names the mode for good: <c>reservoir-low-float-stuck-wet</c>.</param>
/// <param name="Words">The mode in words: <c>reservoir low float stuck wet</c>.</param>
/// <param name="Family">What sort of part fails.</param>
/// <param name="Source">Where such parts are known to fail so, with its mark: a publication, <c>from memory</c>, or <c>common
/// practice, no source</c>.</param>
public sealed record FaultMode(string Id, string Words, FaultFamily Family, string Source)
{
    /// <summary>The shortest that it lasts; zero where it happens at once.</summary>
    public required Duration ShortestLasts { get; init; }

    /// <summary>The longest that it lasts before somebody repairs it.</summary>
    public required Duration LongestLasts { get; init; }

    /// <summary>How much; null where a mode has no size.</summary>
    public FaultSizes? Sizes { get; init; }

    /// <summary>Whether the fault takes its size below zero, as a drift downwards does.</summary>
    internal bool IsNegative { get; init; }

    /// <summary>The faults of the simulated rack that make it up; empty where the bench itself plays it.</summary>
    public ImmutableArray<FaultKind> Kinds { get; init; } = [];

    /// <summary>Where it can strike on a site.</summary>
    internal Func<Site, IEnumerable<FaultTarget>> Targets { get; init; } = _ => [];

    /// <summary>What happens when it strikes.</summary>
    internal Func<DrawnFault, IEnumerable<ScenarioEvent>> Happens { get; init; } = _ => [];

    /// <summary>A mode that is one fault of the simulated rack.</summary>
    internal static FaultMode Of(
        FaultKind kind, string words, FaultFamily family, Func<Site, IEnumerable<FaultTarget>> targets,
        (Duration Shortest, Duration Longest) lasts, string source) => new(words.Replace(' ', '-'), words, family, source)
        {
            ShortestLasts = lasts.Shortest,
            LongestLasts = lasts.Longest,
            Kinds = [kind],
            Targets = targets,
            Happens = drawn => Strike(kind, drawn),
        };

    private static IEnumerable<ScenarioEvent> Strike(FaultKind kind, DrawnFault drawn)
    {
        var from = MonotonicTime.Zero + drawn.At;
        var lasts = drawn.Lasts > Duration.Zero;
        var until = lasts ? from + drawn.Lasts : MonotonicTime.Never;
        var fault = drawn.Instance.Target.Fault(kind, from, until, drawn.Instance.Mode.IsNegative ? -drawn.Size : drawn.Size);
        yield return new RackFails(drawn.At, drawn.Name, fault);
        if (lasts)
        {
            yield return new RackMends(drawn.Ends, $"end of {drawn.Name}");
        }
    }
}

/// <summary>The sizes that a mode is drawn from, each doubling as likely as another.</summary>
/// <param name="Least">The smallest, above 0.</param>
/// <param name="Most">The largest.</param>
/// <param name="Plain">One that a person would try first; failures are shrunk towards it.</param>
/// <param name="Unit">The unit of all three, for people.</param>
public sealed record FaultSizes(double Least, double Most, double Plain, string Unit);
