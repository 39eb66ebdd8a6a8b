using RackController.Model;

namespace RackController.Control.Tests.Exploring;

/// <summary>What happens between one state of a walk and the next.</summary>
internal enum TurningKind
{
    /// <summary>The facts say something else.</summary>
    Facts,

    /// <summary>Nothing but time passes.</summary>
    Time,

    /// <summary>Somebody acknowledges.</summary>
    Acknowledgement,

    /// <summary>Somebody resets.</summary>
    Reset,

    /// <summary>The controller starts anew with its memory.</summary>
    Restart,
}

/// <summary>One state of an interlock in what surrounds it, as a walk found it.</summary>
/// <param name="Interlock">The interlock, after its look.</param>
/// <param name="Around">What it was told.</param>
/// <param name="Due">When it wants to look again by itself.</param>
/// <param name="Came">How the walk came here, from the start.</param>
internal sealed record Standpoint(Interlock Interlock, Surroundings Around, MonotonicTime Due, Trail? Came)
{
    /// <summary>When anything can change by itself: the interlock, or what it is told.</summary>
    public MonotonicTime Next => MonotonicTime.Earlier(Due, Around.HoldEndsAt ?? MonotonicTime.Never);

    /// <summary>The way from the start, for a person who must find what is wrong.</summary>
    public string Way => string.Join(" > ", Steps().Reverse());

    private IEnumerable<string> Steps()
    {
        for (var each = Came; each is not null; each = each.Before)
        {
            yield return each.Step;
        }
    }
}

/// <summary>The steps of a way, the last one first.</summary>
/// <param name="Step">What happened.</param>
/// <param name="Before">What happened before; null at the start.</param>
internal sealed record Trail(string Step, Trail? Before);
