using RackController.Model;

namespace RackController.Bench;

/// <summary>Somebody who comes by a running rack, sees what a person would see, and acts on it.</summary>
internal interface IVisitor
{
    /// <summary>When they come next, as time of the run; never when they do not.</summary>
    MonotonicTime ComesAt { get; }

    /// <summary>They come, see and act. Afterwards <see cref="ComesAt"/> is later.</summary>
    /// <param name="run">The run that they come to.</param>
    /// <returns>What they do, in order, each at the present moment; a fault among it is injected already.</returns>
    IReadOnlyList<ScenarioEvent> Visit(VirtualRun run);
}
