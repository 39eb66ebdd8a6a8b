using NodaTime;

namespace RackController.Service;

/// <summary>How well the scan keeps up.</summary>
/// <param name="Scans">How many scans there were since the start.</param>
/// <param name="Slips">How many of them began a whole period late or more.</param>
/// <param name="WorstLateness">How late the latest of them began.</param>
/// <param name="Lateness">How late all of them began.</param>
/// <param name="Fault">What inputs or outputs complain of; null when they work.</param>
public readonly record struct ScanHealth(long Scans, long Slips, Duration WorstLateness, ScanLateness Lateness, string? Fault);
