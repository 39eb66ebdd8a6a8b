using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>One scan that could matter, as it is on record: all that Control was told, and what came of it. Scans that are not on
/// record were told nothing new and changed nothing.</summary>
/// <param name="At">When it was, on both clocks, to the nanosecond.</param>
/// <param name="Conditions">How the scan itself went; good where it was neither late nor failing.</param>
/// <param name="Requests">What people asked for, in order.</param>
/// <param name="Readings">What sensors said, of those that are noted at this scan.</param>
/// <param name="Commands">The loads that were told something else than before.</param>
/// <param name="Events">What happened; null when nothing did.</param>
public sealed record RecordedScan(
    Moment At, ScanConditions Conditions, ImmutableArray<OperatorRequest> Requests, ImmutableArray<RecordedReading> Readings,
    ImmutableArray<RecordedCommand> Commands, EventsDigest? Events);

/// <summary>What a sensor said.</summary>
/// <param name="Sensor">Place of the sensor on the site that was driven.</param>
/// <param name="Reading">Its reading.</param>
public readonly record struct RecordedReading(int Sensor, Reading Reading);

/// <summary>What a load was told.</summary>
/// <param name="Load">Place of the load on the site that was driven.</param>
/// <param name="State">What it was told.</param>
public readonly record struct RecordedCommand(int Load, SwitchState State);
