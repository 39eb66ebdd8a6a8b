using RackController.Model;

namespace RackController.Control;

/// <summary>Where a flood cycle is, in the words of screen and page.</summary>
public static class FloodPhaseWords
{
    /// <summary>A phase in a word or two: <c>at rest</c>, <c>filling</c>.</summary>
    /// <param name="phase">A phase.</param>
    /// <exception cref="InvariantBrokenException">It is none of the phases.</exception>
    public static string InWords(this FloodPhase phase) => phase switch
    {
        FloodPhase.Idle => "at rest",
        FloodPhase.Waiting => "flood waits",
        FloodPhase.Filling => "filling",
        FloodPhase.Soaking => "soaking",
        FloodPhase.Draining => "draining",
        _ => throw new InvariantBrokenException($"every phase of a flood has its words, {phase} too"),
    };
}
