using RackController.Growing;
using RackController.Model;

namespace RackController.PlanFiles;

/// <summary>What the kinds of tasks are called.</summary>
internal static class TaskWords
{
    /// <summary>For programs and calendars.</summary>
    /// <param name="kind">A kind.</param>
    public static string Key(PlanTaskKind kind) => kind switch
    {
        PlanTaskKind.Harvest => "harvest",
        PlanTaskKind.Deliver => "deliver",
        PlanTaskKind.Move => "move",
        PlanTaskKind.Light => "into-the-light",
        PlanTaskKind.Lamp => "lamps",
        PlanTaskKind.Reservoir => "reservoirs",
        PlanTaskKind.Sow => "sow",
        PlanTaskKind.Soak => "soak",
        _ => throw new InvariantBrokenException("every kind of task has its key"),
    };

    /// <summary>For people, as a heading.</summary>
    /// <param name="kind">A kind.</param>
    public static string Title(PlanTaskKind kind) => kind switch
    {
        PlanTaskKind.Harvest => "Harvest",
        PlanTaskKind.Deliver => "Deliver",
        PlanTaskKind.Move => "Move",
        PlanTaskKind.Light => "Into the light",
        PlanTaskKind.Lamp => "Lamps",
        PlanTaskKind.Reservoir => "Reservoirs",
        PlanTaskKind.Sow => "Sow",
        PlanTaskKind.Soak => "Soak tonight",
        _ => throw new InvariantBrokenException("every kind of task has its title"),
    };

    /// <summary>A task as a line of its own.</summary>
    /// <param name="task">A task.</param>
    public static string Sentence(PlanTask task) => char.ToUpperInvariant(task.Words[0]) + task.Words[1..];
}
