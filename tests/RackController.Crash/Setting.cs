namespace RackController.Crash;

/// <summary>What every life has in common.</summary>
/// <param name="Program">The built program.</param>
/// <param name="RackFile">The rack file.</param>
/// <param name="Work">A folder for what is needed in between.</param>
/// <param name="Disk">The disk of the state folder.</param>
/// <param name="Clock">The host's wall clock as the process sees it.</param>
internal sealed record Setting(string Program, string RackFile, string Work, Disk Disk, MovableClock Clock)
{
    /// <summary>Far longer than anything takes; it only keeps a broken run from lasting for ever.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(180);
}
