using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// What one scan knows, after validation: every interlock and every demand looks at the same facts. A reading that is stale,
/// implausible or corrupt is not here as a number; it is unknown.
/// </summary>
internal sealed class Facts
{
    private readonly double[] values;
    private readonly bool[] known;
    private readonly Band[] bands;
    private readonly bool[] shedding;
    private readonly RackFacts[] racks;
    private readonly ImmutableArray<RackDesk> desks;
    private readonly RelayCommands lastCommands;

    public Facts(Site site, ImmutableArray<RackDesk> desks, Moment start)
    {
        this.desks = desks;
        Site = site;
        values = new double[site.Sensors.Length];
        known = new bool[site.Sensors.Length];
        bands = new Band[site.Sensors.Length];
        BeginLook(site.Sensors);
        shedding = new bool[site.Circuits.Length];
        racks = new RackFacts[site.Racks.Length];
        lastCommands = new RelayCommands(site);
        Now = start;
        Before = start;
    }

    public Site Site { get; }

    /// <summary>The moment of this scan.</summary>
    public Moment Now { get; private set; }

    /// <summary>The moment of the scan before.</summary>
    public Moment Before { get; private set; }

    /// <summary>How this scan itself went.</summary>
    public ScanConditions Conditions { get; private set; }

    /// <summary>Whether this scan is so late that nothing may be trusted, or inputs or outputs fail.</summary>
    public bool IsScanFaulty => Conditions.LateBy > Site.Scan.LateAfter || !Conditions.Io.IsOk;

    /// <summary>Whether the word of a sensor may be believed.</summary>
    public bool IsKnown(SensorId sensor) => known[sensor.Index];

    /// <summary>The value of a sensor whose word may be believed, in its unit. Whoever only compares it asks
    /// <see cref="IsAbove"/> or <see cref="IsBelow"/>, and is left alone while it stays on the same side.</summary>
    public double Value(SensorId sensor)
    {
        bands[sensor.Index] = Band.None;
        return KnownValue(sensor);
    }

    /// <summary>Whether a sensor whose word may be believed reads above a limit.</summary>
    public bool IsAbove(SensorId sensor, double limit)
    {
        var isAbove = KnownValue(sensor) > limit;
        bands[sensor.Index].Narrow(limit, isAbove);
        return isAbove;
    }

    /// <summary>Whether a sensor whose word may be believed reads below a limit.</summary>
    public bool IsBelow(SensorId sensor, double limit)
    {
        var isBelow = KnownValue(sensor) < limit;
        bands[sensor.Index].Narrow(limit, isAbove: !isBelow);
        return isBelow;
    }

    /// <summary>Whether another value of a sensor may change what was decided: it lies beyond a limit that somebody compared it
    /// with since <see cref="BeginLook"/>. A level that nobody asked for may move as it likes.</summary>
    public bool Matters(SensorId sensor, double value) => !bands[sensor.Index].Holds(value);

    /// <summary>What hangs on the values of these sensors is decided anew.</summary>
    public void BeginLook(ImmutableArray<Sensor> sensors)
    {
        foreach (var sensor in sensors)
        {
            bands[sensor.Id.Index] = Band.Everything;
        }
    }

    /// <summary>Whether a contact is known to read 1.</summary>
    public bool IsClosed(SensorId sensor) => known[sensor.Index] && values[sensor.Index] >= 0.5;

    /// <summary>Whether a contact is known to read 0.</summary>
    public bool IsOpen(SensorId sensor) => known[sensor.Index] && values[sensor.Index] < 0.5;

    /// <summary>Whether any of these contacts is known to read 0.</summary>
    public bool AnyIsOpen(ImmutableArray<Sensor> sensors)
    {
        foreach (var sensor in sensors)
        {
            if (IsOpen(sensor.Id))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether all of these sensors may be believed.</summary>
    public bool AllAreKnown(ImmutableArray<Sensor> sensors)
    {
        foreach (var sensor in sensors)
        {
            if (!IsKnown(sensor.Id))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether, at the scan before, a circuit could not carry all that was wanted.</summary>
    public bool IsShedding(CircuitId circuit) => shedding[circuit.Index];

    /// <summary>What a rack is about, after the demands of this scan; of the scan before while they are still being asked.</summary>
    public ref RackFacts About(RackId rack) => ref racks[rack.Index];

    /// <summary>Whether a tier takes part.</summary>
    public bool IsTierInUse(RackId rack, int tierNumber) => (racks[rack.Index].TiersOutOfUse >> tierNumber & 1) == 0;

    /// <summary>What people have asked of a rack that outlasts the asking.</summary>
    public RackDesk Desk(RackId rack) => desks[rack.Index];

    /// <summary>Whether a load was told to be on by the scan before; nothing was, before the first scan.</summary>
    public bool WasOn(LoadId load) => lastCommands.IsOn(load);

    /// <summary>Begins a scan.</summary>
    public void Begin(in Moment now, in ScanConditions conditions, RelayCommands last)
    {
        Conditions = conditions;
        Before = Now;
        Now = now;
        lastCommands.CopyFrom(last);
    }

    /// <summary>Sets what a validated sensor says.</summary>
    public void Know(SensorId sensor, double value)
    {
        values[sensor.Index] = value;
        known[sensor.Index] = true;
    }

    /// <summary>Forgets what a sensor said.</summary>
    public void Forget(SensorId sensor) => known[sensor.Index] = false;

    /// <summary>Sets whether a circuit cannot carry all that is wanted, for the next scan.</summary>
    public void SetShedding(CircuitId circuit, bool isShedding) => shedding[circuit.Index] = isShedding;

    private double KnownValue(SensorId sensor)
    {
        Invariant.Holds(known[sensor.Index], "an unknown reading is never used as a number");
        return values[sensor.Index];
    }
}

/// <summary>What interlocks may know of what a rack is about.</summary>
/// <param name="FloodNumber">Rises by one with every flood that begins.</param>
/// <param name="IsFloodWaiting">Whether a flood is due and cannot begin yet.</param>
/// <param name="FillHitItsLimit">Whether the last fill by level ended by its time limit.</param>
/// <param name="TiersOutOfUse">A bit for each tier that is out of use: bit 1 for tier 1.</param>
internal readonly record struct RackFacts(long FloodNumber, bool IsFloodWaiting, bool FillHitItsLimit, ulong TiersOutOfUse)
{
    /// <summary>What a rack is about, after its demands were asked.</summary>
    public static RackFacts Of(Rack rack, RackDemand demand)
    {
        var outOfUse = 0UL;
        foreach (var tier in rack.Tiers)
        {
            outOfUse |= demand.IsTierInUse(tier.Number) ? 0 : 1UL << tier.Number;
        }

        return new RackFacts(demand.FloodNumber, demand.Phase == FloodPhase.Waiting, demand.FillHitItsLimit, outOfUse);
    }
}
