namespace RackController.Control;

/// <summary>What the timetable says at one scan: nothing, that a flood should run, or that one that came due should
/// not.</summary>
/// <param name="Runs">Whether a flood should run.</param>
/// <param name="Because">Why it should or should not; null when nothing came due.</param>
internal readonly record struct FloodCall(bool Runs, string? Because)
{
    public bool IsNothing => Because is null;

    public static FloodCall Run(string because) => new(true, because);

    public static FloodCall LeaveOut(string because) => new(false, because);
}
