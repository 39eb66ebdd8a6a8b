using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// A whole site that is only arithmetic: racks, water, light, air and circuits that answer the port a board would answer. The same
/// site, start, faults, commands and times give the same readings, bit for bit. It counts monotonic time only, goes forward only,
/// and is not safe for two threads.
/// <para>It is a model. It shows whether a schedule and its interlocks behave; what a real floor, breaker and pump do is for
/// measurement and for licensed people to say.</para>
/// </summary>
public sealed class SimulatedSite : IRackIo
{
    private readonly Site site;
    private readonly SimulatedRack[] racks;
    private readonly SiteElectrics electrics;
    private readonly SensorChannel[] channels;
    private readonly SensorTruth truth;
    private readonly FaultSchedule faults = new();
    private readonly FaultEffects effects;
    private readonly QuietTime quiet;

    /// <summary>Builds the site and puts every load in its safe state.</summary>
    /// <param name="site">The site, checked.</param>
    /// <param name="start">How it begins.</param>
    public SimulatedSite(Site site, PlantStart start)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(start);
        this.site = site;
        Reached = start.At;
        electrics = new SiteElectrics(site, start.Breakers) { Now = start.At };
        racks = [.. site.Racks.Select(rack => new SimulatedRack(rack, electrics.Loads, start))];
        channels = [.. site.Sensors.Select(sensor => new SensorChannel(sensor, start))];
        truth = new SensorTruth(racks, electrics);
        effects = new FaultEffects(racks, electrics, channels);
        quiet = new QuietTime(site, racks, channels);
        Racks = [.. racks.Select(rack => new RackTruth(rack))];
        Circuits = [.. electrics.Circuits.Select(circuit => new CircuitTruth(circuit, electrics))];
        Loads = [.. electrics.Loads.Select(load => new LoadTruth(load, electrics))];
        Settle();
    }

    /// <summary>What is really so on each rack, by <see cref="RackId"/>.</summary>
    public ImmutableArray<RackTruth> Racks { get; }

    /// <summary>What is really so on each circuit, by <see cref="CircuitId"/>.</summary>
    public ImmutableArray<CircuitTruth> Circuits { get; }

    /// <summary>What is really so with each load, by <see cref="LoadId"/>.</summary>
    public ImmutableArray<LoadTruth> Loads { get; }

    /// <summary>The time that the physics has reached.</summary>
    public MonotonicTime Reached { get; private set; }

    /// <summary>
    /// Until when the site may be advanced at once without missing that a contact changes, a supply comes or goes, or a measured
    /// value moves by much: tenths of a second as a float is about to change, a second while a measured depth or flow changes,
    /// two while water moves, ten while air warms, a minute at rest. Later than <see cref="Reached"/>. It holds as long as
    /// nothing is commanded or injected.
    /// </summary>
    public MonotonicTime QuietUntil =>
        MonotonicTime.Earlier(NextInnerChange, Reached + quiet.Span(Reached));

    /// <summary>Schedules something to go wrong. It acts on the way when time passes its beginning and its end.</summary>
    /// <param name="fault">What, where and when. What began before <see cref="Reached"/> begins now.</param>
    /// <exception cref="ArgumentException">The fault does not fit the site.</exception>
    public void Inject(Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        if (fault.WrongFor(site) is { } wrong)
        {
            throw new ArgumentException(wrong, nameof(fault));
        }

        faults.Add(fault);
        TakeDueFaults();
    }

    /// <summary>The air of the room round all racks becomes this.</summary>
    /// <param name="celsius">Temperature, degrees Celsius.</param>
    /// <param name="humidityPercent">Relative humidity, %.</param>
    public void SetRoom(double celsius, double humidityPercent)
    {
        foreach (var rack in racks)
        {
            rack.SetRoom(celsius, humidityPercent);
        }
    }

    /// <summary>The controller is gone, and every relay coil falls to rest: normally-closed loads are on, the others off.</summary>
    /// <param name="now">When.</param>
    public void ReleaseRelays(MonotonicTime now)
    {
        AdvanceTo(now);
        foreach (var load in electrics.Loads)
        {
            load.Commanded = load.Load.Contact == RelayContact.NormallyClosed;
        }

        Settle();
    }

    /// <summary>Lets time pass under the commands last written. An earlier time changes nothing.</summary>
    /// <param name="time">The time to reach.</param>
    public void AdvanceTo(MonotonicTime time)
    {
        while (Reached < time)
        {
            var next = MonotonicTime.Earlier(time, NextInnerChange);
            Pass(next);
            TakeDueFaults();
        }
    }

    /// <inheritdoc/>
    public IoOutcome Read(MonotonicTime now, Readings readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        AdvanceTo(now);
        if (effects.ReadFails)
        {
            return new IoOutcome("the inputs do not answer (simulated fault)");
        }

        foreach (var sensor in site.Sensors)
        {
            readings[sensor.Id] =
                channels[sensor.Id.Index].Say(truth.Value(sensor), truth.TakenAt(sensor, now), now);
        }

        return IoOutcome.Ok;
    }

    /// <inheritdoc/>
    public IoOutcome Write(MonotonicTime now, RelayCommands commands)
    {
        ArgumentNullException.ThrowIfNull(commands);
        AdvanceTo(now);
        if (effects.WriteFails)
        {
            return new IoOutcome("the relays do not answer (simulated fault)");
        }

        var changed = false;
        foreach (var load in electrics.Loads)
        {
            var on = commands.IsOn(load.Load.Id);
            changed |= load.Commanded != on;
            load.Commanded = on;
        }

        if (changed)
        {
            Settle();
        }

        return IoOutcome.Ok;
    }

    private MonotonicTime NextInnerChange => MonotonicTime.Earlier(faults.NextChange, electrics.NextChange);

    private void Pass(MonotonicTime next)
    {
        if (next > Reached)
        {
            foreach (var rack in racks)
            {
                rack.Advance(Reached, next);
            }

            Reached = next;
            electrics.Now = next;
            FollowContacts();
        }

        if (electrics.NextChange <= Reached)
        {
            Settle();
        }
    }

    private void TakeDueFaults()
    {
        var any = false;
        while (faults.DueAt(Reached) is { } due)
        {
            effects.Turn(due.Fault, begins: due.Next());
            any = true;
        }

        if (any)
        {
            ApplyFaults();
        }
    }

    private void ApplyFaults()
    {
        effects.Apply(faults);
        Settle();
    }

    private void Settle()
    {
        electrics.Settle();
        foreach (var rack in racks)
        {
            rack.TakeLoads();
        }

        FollowContacts();
    }

    private void FollowContacts()
    {
        foreach (var sensor in site.Sensors)
        {
            if (sensor.IsContact)
            {
                channels[sensor.Id.Index].Follow(truth.Value(sensor), Reached);
            }
        }
    }
}
