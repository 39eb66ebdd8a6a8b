using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>What is seen of a light against what it was told, once it has lasted: a hand over the sensor, or a lamp that warms up, is
/// none.</summary>
/// <param name="lasts">How long it must be seen.</param>
internal sealed class LightContradiction(Duration lasts)
{
    private MonotonicTime? since;
    private bool isThere;

    /// <summary>Looks at a moment at which it can be seen.</summary>
    /// <returns>Whether it is there.</returns>
    public bool Look(bool isSeen, Facts facts, Agenda agenda)
    {
        since = isSeen ? since ?? facts.Now.Monotonic : null;
        var due = since + lasts;
        isThere = isSeen && (isThere || facts.Now.Monotonic >= due);
        if (due is { } time && !isThere)
        {
            agenda.Add(time);
        }

        return isThere;
    }

    /// <summary>Nothing can be seen now.</summary>
    /// <returns>Whether it was there when it last could.</returns>
    public bool Stands()
    {
        since = null;
        return isThere;
    }
}
