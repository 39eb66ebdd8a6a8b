using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// What one scan knows, after validation: every interlock and every demand looks at the same facts. A reading that is stale,
/// implausible or corrupt is not here as a number; it is unknown. Whoever asks is told of the part of the site where it stands and of
/// nothing else: it is looked at when something changes there, and would not hear of a change elsewhere.
/// </summary>
internal sealed partial class Facts
{
    private readonly Areas areas;
    private readonly double[] values;
    private readonly double[] beforeSwitching;
    private readonly MonotonicTime[] takenAt;
    private readonly bool[] known;
    private readonly string?[] doubts;
    private readonly string?[] newDoubts;
    private readonly Band[] bands;
    private readonly bool[] shedding;
    private readonly Flow[] flows;
    private readonly RackFacts[] racks;
    private readonly ImmutableArray<RackDesk> desks;
    private readonly ProofTestLog proofTests;
    private readonly RelayCommands lastCommands;
    private Area? asking;

    public Facts(Site site, Areas areas, ImmutableArray<RackDesk> desks, ProofTestLog proofTests, Moment start)
    {
        this.areas = areas;
        this.desks = desks;
        this.proofTests = proofTests;
        Site = site;
        values = new double[site.Sensors.Length];
        beforeSwitching = new double[site.Sensors.Length];
        Array.Fill(beforeSwitching, double.NaN);
        takenAt = new MonotonicTime[site.Sensors.Length];
        known = new bool[site.Sensors.Length];
        doubts = new string?[site.Sensors.Length];
        newDoubts = new string?[site.Sensors.Length];
        bands = new Band[site.Sensors.Length];
        shedding = new bool[site.Circuits.Length];
        flows = new Flow[site.Loads.Length];
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
    public bool IsKnown(SensorId sensor)
    {
        MayAskSensor(sensor);
        return known[sensor.Index] && doubts[sensor.Index] is null;
    }

    /// <summary>Why a sensor is doubted, as a phrase that can follow its name; null for one that is not.</summary>
    public string? DoubtAbout(SensorId sensor)
    {
        MayAskSensor(sensor);
        return doubts[sensor.Index];
    }

    /// <summary>When what a sensor says was measured.</summary>
    public MonotonicTime TakenAt(SensorId sensor)
    {
        MayAskSensor(sensor);
        return takenAt[sensor.Index];
    }

    /// <summary>The value of a sensor whose word may be believed, in its unit, at a time that whoever asks has named on the agenda:
    /// everybody scans then, so everybody sees the same. At any other time it would be that of whichever scan came first.</summary>
    public double ValueWhenDue(SensorId sensor) => KnownValue(sensor);

    /// <summary>What a measuring sensor of a circuit said, in its unit, at the scan that last switched one of its loads, before that
    /// had any effect; not a number where it was unknown, or while nothing was switched yet.</summary>
    public double ValueBeforeSwitching(SensorId sensor)
    {
        MayAskSensor(sensor);
        return beforeSwitching[sensor.Index];
    }

    /// <summary>The value of a sensor whose word may be believed, in its unit, for words only: nothing is decided by it. Whoever
    /// decides asks <see cref="IsAbove"/> or <see cref="IsBelow"/>, and is left alone while the value stays on the same side.</summary>
    public double ValueToTell(SensorId sensor)
    {
        bands[sensor.Index] = Band.None;
        return KnownValue(sensor);
    }

    /// <summary>The value at a moment that every controller looks at: the first scan at or after a time that the agenda named, or the
    /// one that knows of a load that the scan before switched. What it says between two such moments is not known.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="due">That moment.</param>
    /// <param name="value">The value, in its unit.</param>
    /// <returns>Whether its word may be believed.</returns>
    public bool TrySample(SensorId sensor, MonotonicTime due, out double value) =>
        TrySampleDoubted(sensor, due, out value) && IsKnown(sensor);

    /// <summary>The same of a sensor that may be doubted.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="due">That moment.</param>
    /// <param name="value">The value, in its unit.</param>
    /// <returns>Whether its word could be believed but for the doubt.</returns>
    public bool TrySampleDoubted(SensorId sensor, MonotonicTime due, out double value)
    {
        MayAsk(areas.Of(sensor));
        Invariant.Holds(
            Before.Monotonic <= due && due <= Now.Monotonic, "a value is sampled only at a scan that time or a command brings about");
        value = values[sensor.Index];
        return known[sensor.Index];
    }

    /// <summary>Whether a sensor reads above a limit; its word may be believed.</summary>
    public bool IsAbove(Limit limit)
    {
        var isAbove = KnownValue(limit.Sensor) > limit.Value;
        bands[limit.Sensor.Index].Narrow(limit.Value, isAbove);
        return isAbove;
    }

    /// <summary>Whether a sensor whose word may be believed reads below a limit.</summary>
    public bool IsBelow(Limit limit)
    {
        var isBelow = KnownValue(limit.Sensor) < limit.Value;
        bands[limit.Sensor.Index].Narrow(limit.Value, isAbove: !isBelow);
        return isBelow;
    }

    /// <summary>Whether a contact is known to read 1.</summary>
    public bool IsClosed(SensorId contact) => IsKnown(contact) && IsAboveHalf(contact);

    /// <summary>Whether a contact is known to read 0.</summary>
    public bool IsOpen(SensorId contact) => IsKnown(contact) && !IsAboveHalf(contact);

    /// <summary>Whether, at the scan before, the contactor of a circuit was told to cut it.</summary>
    public bool WasCut(CircuitId circuit)
    {
        MayAsk(areas.Of(circuit));
        return lastCommands.IsCut(circuit);
    }

    /// <summary>Whether, at the scan before, a circuit could not carry all that was wanted.</summary>
    public bool IsShedding(CircuitId circuit)
    {
        MayAsk(areas.Of(circuit));
        return shedding[circuit.Index];
    }

    /// <summary>What a rack is about, after the demands of this scan; of the scan before while they are still being asked.</summary>
    public ref RackFacts About(RackId rack)
    {
        MayAsk(areas.Of(rack));
        return ref racks[rack.Index];
    }

    /// <summary>Whether a tier takes part.</summary>
    public bool IsTierInUse(RackId rack, int tierNumber) => (About(rack).TiersOutOfUse & 1UL << tierNumber) == 0;

    /// <summary>What people have asked of a rack that outlasts the asking.</summary>
    public RackDesk Desk(RackId rack)
    {
        MayAsk(areas.Of(rack));
        return desks[rack.Index];
    }

    /// <summary>Whether hands are in a rack that draws from a circuit, or may be still; names when they may be out.</summary>
    public bool MayHaveHandsIn(CircuitId circuit, Agenda agenda)
    {
        var area = areas.Of(circuit);
        MayAsk(area);
        var any = false;
        foreach (var load in area.Loads)
        {
            if (desks[load.Rack.Index] is { MayHaveHandsIn: true } desk)
            {
                any = true;
                agenda.Add(MonotonicTime.Earlier(desk.HoldEndsAt ?? MonotonicTime.Never, desk.ClearAt ?? MonotonicTime.Never));
            }
        }

        return any;
    }

    /// <summary>The proof tests of the rack or circuit that asks.</summary>
    public ImmutableArray<ProofTestItem> ProofTests => proofTests.At(asking!);

    /// <summary>Whether the proof test of whoever asks is due; when not, names the time at which it will be.</summary>
    public bool IsOverdue(ProofTestItem item, Agenda agenda) => proofTests.IsOverdue(item, Now.Monotonic, agenda);

    /// <summary>Whether the proof test of a contact is under way.</summary>
    public bool IsUnderTest(SensorId contact) => proofTests.UnderWay == ProofTestOf(contact);

    /// <summary>Whether the proof test of a contact was passed at the scan before.</summary>
    public bool HasJustPassed(SensorId contact) => proofTests.JustPassed == ProofTestOf(contact);

    /// <summary>Whether a load of the rack, or on the circuit, that asks was told to be on by the scan before; before the first scan
    /// everything is in its safe state.</summary>
    public bool WasOn(LoadId load)
    {
        MayAskLoad(load);
        return lastCommands.IsOn(load);
    }

    /// <summary>Whether a load of the rack, or on the circuit, that asks draws current, as far as sensors tell.</summary>
    public Flow FlowOf(LoadId load)
    {
        MayAskLoad(load);
        return flows[load.Index];
    }

    private ProofTestItem ProofTestOf(SensorId contact)
    {
        MayAsk(areas.Of(contact));
        return proofTests.Of(contact);
    }

    private double KnownValue(SensorId sensor)
    {
        Invariant.Holds(IsKnown(sensor), "an unknown reading is never used as a number");
        return values[sensor.Index];
    }

    private bool IsAboveHalf(SensorId contact)
    {
        Invariant.Holds(Site[contact].IsContact, "only a contact is closed or open; a measured value is compared with a limit");
        var isAbove = values[contact.Index] > 0.5;
        bands[contact.Index].Narrow(0.5, isAbove);
        return isAbove;
    }

    private void MayAskLoad(LoadId load)
    {
        var (rack, circuit) = (Site[load].Rack, Site[load].Circuit);
        MayAsk(asking == areas.Of(circuit) ? asking : areas.Of(rack));
    }

    private void MayAskSensor(SensorId sensor)
    {
        var owner = areas.Of(sensor);
        MayAsk(asking is not null && areas.DrawsFrom(asking, owner) ? asking : owner);
    }

    private void MayAsk(Area owner) => Invariant.Holds(
        asking == owner, "whoever looks asks only for what stands in its own rack or circuit, since nothing else calls it");
}
