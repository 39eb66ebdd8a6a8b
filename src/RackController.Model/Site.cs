using System.Collections.Immutable;
using NodaTime;

namespace RackController.Model;

/// <summary>
/// The place: every rack that one controller drives and the circuits they draw from. Immutable and already checked: the
/// rack file reader refuses what cannot work, so whoever holds a site may rely on it. It is not live state; what the
/// sensors say is in <see cref="Readings"/>.
/// </summary>
public sealed record Site
{
    /// <summary>What the grower calls the place.</summary>
    public required string Name { get; init; }

    /// <summary>The IANA time zone that schedules are read in.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>The branch circuits, by <see cref="CircuitId"/>.</summary>
    public required ImmutableArray<Circuit> Circuits { get; init; }

    /// <summary>The racks, by <see cref="RackId"/>.</summary>
    public required ImmutableArray<Rack> Racks { get; init; }

    /// <summary>Everything that a relay switches, on all racks, by <see cref="LoadId"/>.</summary>
    public required ImmutableArray<Load> Loads { get; init; }

    /// <summary>Everything that is measured, on all racks and circuits, by <see cref="SensorId"/>.</summary>
    public required ImmutableArray<Sensor> Sensors { get; init; }

    /// <summary>The units that people are shown figures in.</summary>
    public ShownUnits Units { get; init; } = ShownUnits.Metric;

    /// <summary>How often the site is scanned and when a scan counts as late.</summary>
    public ScanTiming Scan { get; init; } = ScanTiming.Default;

    /// <summary>Where the relays and sensors are: simulated, or on lines of a board.</summary>
    public required IoPlan Io { get; init; }

    /// <summary>Whom to tell of alarms while nobody looks; null for nobody. No decision of the controller depends on it.</summary>
    public NoticePlan? Notices { get; init; }

    /// <summary>How batches of the growing book act on the racks.</summary>
    public BatchPolicy Batches { get; init; } = BatchPolicy.Default;

    /// <summary>The rack with this identity.</summary>
    /// <param name="id">An identity of this site.</param>
    public Rack this[RackId id] => Racks[id.Index];

    /// <summary>The circuit with this identity.</summary>
    /// <param name="id">An identity of this site.</param>
    public Circuit this[CircuitId id] => Circuits[id.Index];

    /// <summary>The load with this identity.</summary>
    /// <param name="id">An identity of this site.</param>
    public Load this[LoadId id] => Loads[id.Index];

    /// <summary>The sensor with this identity.</summary>
    /// <param name="id">An identity of this site.</param>
    public Sensor this[SensorId id] => Sensors[id.Index];
}
