using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Every proof test of a site and when it is due. Interlocks count monotonic time; a proof test is due months later, over restarts and
/// times away, and so by the calendar: the time that schedules read, which goes on from the last time known while the wall clock is
/// not trusted. What was never tested is due a time in service after the first start, which a wrong calendar does not shorten.
/// </summary>
internal sealed class ProofTestLog
{
    private const string ServiceKey = "proof-tests/in service age";
    private readonly ScheduleClock calendar;
    private readonly ImmutableArray<ProofTestItem> items;
    private readonly ImmutableArray<ImmutableArray<ProofTestItem>> byArea;
    private readonly ImmutableArray<ProofTestItem?> byContact;
    private readonly Duration firstWithin;
    private readonly MonotonicTime inServiceSince;

    public ProofTestLog(Site site, Areas areas, ScheduleClock calendar, MemoryReader memory, Moment start, ICollection<SensorLevel> levels)
    {
        this.calendar = calendar;
        items = [.. ItemsOf(site, levels)];
        byArea = areas.Sort(items, item => item.Place);
        byContact = [.. site.Sensors.Select(sensor => items.FirstOrDefault(item => item.Contact == sensor.Id))];
        firstWithin = site.Racks.Min(rack => rack.Limits.FirstTestWithin);
        inServiceSince = memory.TimeOf(ServiceKey) ?? start.Monotonic;
        foreach (var item in items)
        {
            item.Restore(memory);
        }
    }

    /// <summary>The test that is under way; null while none is.</summary>
    public ProofTestItem? UnderWay { get; set; }

    /// <summary>The test that was passed at the scan before, for whoever waits for that; null when none was.</summary>
    public ProofTestItem? JustPassed { get; set; }

    /// <summary>Counts up whenever something changed that must be remembered.</summary>
    public long MemoryVersion { get; private set; }

    /// <summary>The test of a sensor or load; null when it has none.</summary>
    public ProofTestItem? Find(string name) => items.FirstOrDefault(item => item.Name == name);

    /// <summary>The test of a contact.</summary>
    public ProofTestItem Of(SensorId contact) => byContact[contact.Index]!;

    /// <summary>The tests of an area.</summary>
    public ImmutableArray<ProofTestItem> At(Area area) => byArea[area.Index];

    /// <summary>Whether a test is due by a time; when not, names the time at which it will be.</summary>
    public bool IsOverdue(ProofTestItem item, MonotonicTime now, Agenda agenda)
    {
        var due = DueOf(item);
        if (now >= due)
        {
            return true;
        }

        agenda.Add(due);
        return false;
    }

    /// <summary>The test under way was passed.</summary>
    public void Pass(MonotonicTime now)
    {
        UnderWay!.Pass(calendar.TimeAt(now));
        JustPassed = UnderWay;
        MemoryVersion++;
    }

    /// <summary>The test under way failed.</summary>
    public void Fail()
    {
        UnderWay!.Fail();
        MemoryVersion++;
    }

    /// <summary>Puts right what a clock that was wrong wrote, after it may have been set.</summary>
    public void PutRight(MonotonicTime now)
    {
        foreach (var item in items)
        {
            MemoryVersion += item.NotLaterThan(calendar.TimeAt(now)) ? 1 : 0;
        }
    }

    public ImmutableArray<ProofTestStatus> Status(MonotonicTime now) =>
    [
        .. items.Select(item => (item, due: DueOf(item))).Select(of => new ProofTestStatus(
            of.item.Name, of.item.Kind, of.item.Interval, of.item.PassedAt, calendar.TimeAt(of.due), now >= of.due, of.item.HasFailed)),
    ];

    public void Save(MemoryWriter memory)
    {
        memory.PutAge(ServiceKey, inServiceSince);
        foreach (var item in items)
        {
            item.Save(memory);
        }
    }

    private MonotonicTime DueOf(ProofTestItem item) => item.PassedAt is { } passedAt
        ? calendar.Comes(passedAt + item.Interval)
        : inServiceSince + Duration.Min(firstWithin, item.Interval);

    private static IEnumerable<ProofTestItem> ItemsOf(Site site, ICollection<SensorLevel> levels) =>
    [
        .. site.Sensors.Where(sensor => sensor.IsContact).Select(sensor => ContactTest.Of(site, sensor)),
        .. from sensor in site.Sensors
           where sensor.Kind is SensorKind.CircuitCurrent or SensorKind.PumpCurrent
           let measured = site.Loads.Where(load => load.Circuit == sensor.Circuit || IsPumpOf(site, sensor, load)).ToList()
           where measured.Count > 0
           select CircuitTests.OfCurrent(site, sensor, site[measured[0].Circuit], measured, levels),
        .. site.Racks.Where(rack => rack.FloatCutout is not null).Select(WiredFloatTest.Of),
        .. site.Racks.Where(rack => rack.TimeCutout is not null).Select(WiredTimeRelayTest.Of),
        .. site.Loads.Select(load => CircuitTests.OfRelay(site, load)),
    ];

    private static bool IsPumpOf(Site site, Sensor sensor, Load load) =>
        sensor.Rack is { } rack && site[rack].Pump.Load == load.Id;
}
