using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// A whole site that is only arithmetic: racks, water, light, air and circuits that answer the port a board would answer. The same
/// site, start, faults and commands give the same readings at the same times, bit for bit, however often anybody looks in between. It
/// counts monotonic time only, goes forward only, and is not safe for two threads.
/// <para>It is a model. It shows whether a schedule and its interlocks behave; what a real floor, breaker and pump do is for
/// measurement and for licensed people to say.</para>
/// </summary>
public sealed class SimulatedSite : IRackIo
{
    private readonly Site site;
    private readonly SimulatedRack[] racks;
    private readonly SiteElectrics electrics;
    private readonly SiteSensors sensors;
    private readonly FaultSchedule faults = new();
    private readonly FaultEffects effects;
    private readonly RoomAir room;

    /// <summary>Builds the site and puts every load in its safe state.</summary>
    /// <param name="site">The site, checked.</param>
    /// <param name="start">How it begins.</param>
    public SimulatedSite(Site site, PlantStart start)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(start);
        this.site = site;
        Reached = start.At;
        electrics = new SiteElectrics(site, start) { Now = start.At };
        racks = [.. site.Racks.Select(rack => new SimulatedRack(rack, electrics.Loads, start))];
        sensors = new SiteSensors(site, start, new SensorTruth(site, racks, electrics));
        effects = new FaultEffects(racks, electrics);
        room = new RoomAir(racks);
        Racks = [.. racks.Select(rack => new RackTruth(rack))];
        Circuits = [.. electrics.Circuits.Select(circuit => new CircuitTruth(circuit, electrics))];
        Loads = [.. electrics.Loads.Select(load => new LoadTruth(load, electrics))];
        Settle();
        sensors.FollowContacts(Reached);
    }

    /// <summary>What is really so on each rack, by <see cref="RackId"/>.</summary>
    public ImmutableArray<RackTruth> Racks { get; }

    /// <summary>What is really so on each circuit, by <see cref="CircuitId"/>.</summary>
    public ImmutableArray<CircuitTruth> Circuits { get; }

    /// <summary>What is really so with each load, by <see cref="LoadId"/>.</summary>
    public ImmutableArray<LoadTruth> Loads { get; }

    /// <summary>The time that the physics has reached.</summary>
    public MonotonicTime Reached { get; private set; }

    /// <summary>Watches for a quantity passing a level, up or down, which is then news to <see cref="AdvanceToNews"/>. Float
    /// heights, tray rims and the pump's intake are watched anyway.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="quantity">Which quantity.</param>
    /// <param name="tierNumber">The tier, 1 at the bottom; null for the whole rack.</param>
    /// <param name="level">The level, in the unit of the quantity.</param>
    public void Watch(RackId rack, RackQuantity quantity, int? tierNumber, double level) =>
        racks[rack.Index].Watch(quantity, tierNumber, level);

    /// <summary>Watches for what a measuring sensor says passing a value.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="value">The value, in its unit.</param>
    public void Watch(SensorId sensor, double value)
    {
        sensors.Watch(sensor, value);
        var what = site[sensor];
        if (SensorTruth.Quantity(what.Kind) is { } quantity)
        {
            Watch(what.Rack!.Value, quantity, what.TierNumber, value);
        }
    }

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

    /// <summary>The air of the room round all racks goes to this and stays there, until it is told otherwise.</summary>
    /// <param name="celsius">Temperature, degrees Celsius.</param>
    /// <param name="humidityPercent">Relative humidity, %.</param>
    /// <param name="reachedAt">When it is there, having changed evenly; <see cref="Reached"/> or earlier for at once.</param>
    public void SetRoom(double celsius, double humidityPercent, MonotonicTime reachedAt)
    {
        room.Aim(celsius, humidityPercent, Reached, reachedAt);
        Settle();
    }

    /// <summary>The controller is gone, and every relay coil falls to rest: normally-closed loads are on, the others off,
    /// and contactors are closed.</summary>
    /// <param name="now">When.</param>
    public void ReleaseRelays(MonotonicTime now)
    {
        AdvanceTo(now);
        foreach (var load in electrics.Loads)
        {
            load.Commanded = load.Load.Contact == RelayContact.NormallyClosed;
        }

        foreach (var circuit in electrics.Circuits)
        {
            circuit.Contactor.IsToldToCut = false;
        }

        Settle();
    }

    /// <summary>Lets time pass under the commands last written. An earlier time changes nothing.</summary>
    /// <param name="time">The time to reach.</param>
    public void AdvanceTo(MonotonicTime time)
    {
        while (Reached < time)
        {
            Pass(time);
        }
    }

    /// <summary>Lets time pass until there is something new that a controller or a judge could see: a contact changes, a supply comes
    /// or goes, a load begins or ends to draw current, a fault begins or ends, or a watched level is passed. The moment is exact to
    /// the nanosecond. Between it and the last such moment nothing of this kind happened, so nobody missed anything.</summary>
    /// <param name="time">Not beyond here.</param>
    /// <returns>Whether there was any.</returns>
    public bool AdvanceToNews(MonotonicTime time)
    {
        var news = false;
        while (Reached < time && !news)
        {
            news = Pass(time);
        }

        return news;
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

        sensors.Read(readings, now);
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

        foreach (var circuit in site.Circuits)
        {
            var contactor = electrics.Circuits[circuit.Id.Index].Contactor;
            changed |= contactor.IsToldToCut != commands.IsCut(circuit.Id);
            contactor.IsToldToCut = commands.IsCut(circuit.Id);
        }

        if (changed)
        {
            Settle();
        }

        return IoOutcome.Ok;
    }

    // Up to a time, or to the next moment at which anything has to be looked at; says whether there was news.
    private bool Pass(MonotonicTime time)
    {
        var next = MonotonicTime.Earlier(time, MonotonicTime.Earlier(faults.NextChange, electrics.NextChange));
        next = MonotonicTime.Earlier(next, sensors.Due);
        next = MonotonicTime.Earlier(next, room.ReachedAt);
        foreach (var rack in racks)
        {
            next = MonotonicTime.Earlier(next, rack.Horizon);
        }

        Reached = next;
        electrics.Now = next;
        var (news, isCut) = (false, false);
        foreach (var rack in racks)
        {
            if (rack.MoveTo(next))
            {
                news = true;
                sensors.FollowContacts(rack.Rack.Id, Reached);
                isCut |= rack.FollowCutout();
            }
        }

        _ = room.Reach(Reached);
        news |= sensors.FollowDue(Reached);
        if (isCut || electrics.NextChange <= Reached)
        {
            Settle();
            news = true;
        }

        return TakeDueFaults() || news;
    }

    private bool TakeDueFaults()
    {
        var any = false;
        while (faults.Turn(Reached, out var begins) is { } fault)
        {
            any = true;
            effects.Turn(fault, begins);
            sensors.Turn(fault, begins, Reached);
        }

        if (any)
        {
            effects.Apply(faults);
            foreach (var rack in racks)
            {
                rack.FollowCutout();
            }

            Settle();
            sensors.FollowContacts(Reached);
        }

        return any;
    }

    // Relays move no water at once; only supplies come and go with them.
    private void Settle()
    {
        electrics.Settle();
        foreach (var rack in racks)
        {
            rack.Take();
        }

        sensors.FollowSupplies(Reached);
    }
}
