using NodaTime;
using RackController.Model;

namespace RackController.Testing;

/// <summary>Small, whole sites to test with. Change what a test is about with <c>with</c>.</summary>
public static class Sites
{
    /// <summary>One rack on one 120 V, 15 A circuit in New York with every kind of load and a contact of every kind. Lit
    /// 06:00 to 22:00, flooded at 07:00, 13:00 and 19:00 for 5 min of filling and 5 min of soaking.</summary>
    /// <param name="tiers">How many tiers, from 1.</param>
    public static Site OneRack(int tiers = 2)
    {
        var rack = new RackId(0);
        var circuit = new CircuitId(0);
        var loads = new List<Load>
        {
            Load(0, "north/pump", LoadKind.Pump, 45, 3),
            Load(1, "north/aerator", LoadKind.Aerator, 5, 1),
            Load(2, "north/fan", LoadKind.Fan, 12, 2),
        };
        for (var tier = 1; tier <= tiers; tier++)
        {
            loads.Add(Load(loads.Count, $"north/tier {tier} light", LoadKind.Light, 80, 5) with { TierNumber = tier });
            loads.Add(Load(loads.Count, $"north/tier {tier} valve", LoadKind.Valve, 6, 3) with { TierNumber = tier });
        }

        var sensors = new List<Sensor>
        {
            Contact(0, "north/reservoir low float", SensorKind.ReservoirLowFloat) with { Rack = rack, HeightMm = 60 },
            Contact(1, "north/leak rope", SensorKind.LeakRope) with { Rack = rack },
            Contact(2, "sockets/supply sense", SensorKind.SupplySense) with { Circuit = circuit },
        };
        for (var tier = 1; tier <= tiers; tier++)
        {
            sensors.Add(Contact(sensors.Count, $"north/tier {tier} high float", SensorKind.TrayHighFloat)
                with
            { Rack = rack, TierNumber = tier, HeightMm = 65 });
        }

        return new Site
        {
            Name = "test cellar",
            Zone = DateTimeZoneProviders.Tzdb["America/New_York"],
            Circuits =
            [
                new Circuit
                {
                    Id = circuit, Name = "sockets", VoltageV = 120, BreakerA = 15, ContinuousLimitA = 12,
                    SupplySense = new SensorId(2),
                },
            ],
            Racks = [Rack(rack, loads, tiers)],
            Loads = [.. loads],
            Sensors = [.. sensors],
            Io = new SimulatedIo(),
        };
    }

    /// <summary>Racks like that of <see cref="OneRack"/>, called rack 1 and so on, that share circuits.</summary>
    /// <param name="racks">How many, from 1.</param>
    /// <param name="racksToACircuit">How many share a circuit, from 1.</param>
    /// <param name="tiers">How many tiers each has, from 1.</param>
    public static Site ManyRacks(int racks, int racksToACircuit, int tiers = 2)
    {
        var one = OneRack(tiers);
        var circuits = Enumerable.Range(0, (racks + racksToACircuit - 1) / racksToACircuit).Select(i => new CircuitId(i)).ToList();
        var sense = one.Sensors.Single(sensor => sensor.Kind == SensorKind.SupplySense);
        var sensorsOfRack = one.Sensors.Remove(sense);
        SensorId SenseOf(CircuitId circuit) => new(racks * sensorsOfRack.Length + circuit.Index);
        return one with
        {
            Circuits =
                [.. circuits.Select(id => one.Circuits[0] with { Id = id, Name = $"sockets {id.Index + 1}", SupplySense = SenseOf(id) })],
            Racks = [.. Enumerable.Range(0, racks).Select(i => Moved(one.Racks[0], i, one.Loads.Length))],
            Loads = [.. Enumerable.Range(0, racks).SelectMany(i => one.Loads.Select(load => load with
            {
                Id = Moved(load.Id, i, one.Loads.Length),
                Name = Moved(load.Name, i),
                Rack = new RackId(i),
                Circuit = circuits[i / racksToACircuit],
            }))],
            Sensors =
            [
                .. Enumerable.Range(0, racks).SelectMany(i => sensorsOfRack.Select((sensor, n) => sensor with
                {
                    Id = new SensorId(i * sensorsOfRack.Length + n),
                    Name = Moved(sensor.Name, i),
                    Rack = new RackId(i),
                })),
                .. circuits.Select(id => sense with { Id = SenseOf(id), Name = $"sockets {id.Index + 1}/supply sense", Circuit = id }),
            ],
        };
    }

    /// <summary>The site with its first rack changed.</summary>
    /// <param name="site">A site.</param>
    /// <param name="change">What to change.</param>
    public static Site WithRack(this Site site, Func<Rack, Rack> change) =>
        site with { Racks = site.Racks.SetItem(0, change(site.Racks[0])) };

    /// <summary>The site with the limits of its first rack changed.</summary>
    /// <param name="site">A site.</param>
    /// <param name="change">What to change.</param>
    public static Site WithLimits(this Site site, Func<InterlockLimits, InterlockLimits> change) =>
        site.WithRack(rack => rack with { Limits = change(rack.Limits) });

    /// <summary>The site with the schedule of its first rack changed.</summary>
    /// <param name="site">A site.</param>
    /// <param name="change">What to change.</param>
    public static Site WithSchedule(this Site site, Func<RackSchedule, RackSchedule> change) =>
        site.WithRack(rack => rack with { Schedule = change(rack.Schedule) });

    /// <summary>The site with the current of its first rack's pump measured, by <c>north/pump current</c>.</summary>
    /// <param name="site">A site.</param>
    public static Site WithPumpCurrent(this Site site) => site with
    {
        Sensors = site.Sensors.Add(Contact(site.Sensors.Length, $"{site.Racks[0].Name}/pump current", SensorKind.PumpCurrent) with
        {
            Rack = site.Racks[0].Id,
            PlausibleMax = 10,
            StaleAfter = Duration.FromSeconds(30),
        }),
    };

    /// <summary>The site with the current of its first circuit measured, by <c>sockets/current</c>.</summary>
    /// <param name="site">A site.</param>
    public static Site WithCircuitCurrent(this Site site) => site with
    {
        Sensors = site.Sensors.Add(Contact(site.Sensors.Length, $"{site.Circuits[0].Name}/current", SensorKind.CircuitCurrent) with
        {
            Circuit = site.Circuits[0].Id,
            PlausibleMax = 150,
            StaleAfter = Duration.FromSeconds(30),
        }),
    };

    /// <summary>The site with a contactor upstream of its first circuit.</summary>
    /// <param name="site">A site.</param>
    public static Site WithContactor(this Site site) =>
        site with { Circuits = site.Circuits.SetItem(0, site.Circuits[0] with { HasUpstreamContactor = true }) };

    /// <summary>The load with this name.</summary>
    /// <param name="site">A site.</param>
    /// <param name="name">The whole name, such as <c>north/pump</c>.</param>
    public static LoadId LoadNamed(this Site site, string name) => site.Loads.Single(load => load.Name == name).Id;

    /// <summary>The sensor with this name.</summary>
    /// <param name="site">A site.</param>
    /// <param name="name">The whole name.</param>
    public static SensorId SensorNamed(this Site site, string name) =>
        site.Sensors.Single(sensor => sensor.Name == name).Id;

    private static Rack Moved(Rack rack, int index, int loads) => rack with
    {
        Id = new RackId(index),
        Name = Moved(rack.Name, index),
        Pump = rack.Pump with { Load = Moved(rack.Pump.Load, index, loads) },
        Tiers =
        [
            .. rack.Tiers.Select(tier => tier with
            {
                Light = Moved(tier.Light!.Value, index, loads),
                Valve = Moved(tier.Valve!.Value, index, loads),
            }),
        ],
        Schedule = rack.Schedule with { Runs = [.. rack.Schedule.Runs.Select(run => run with { Load = Moved(run.Load, index, loads) })] },
    };

    private static LoadId Moved(LoadId load, int index, int loads) => new(load.Index + index * loads);

    private static string Moved(string name, int index) => name.Replace("north", $"rack {index + 1}", StringComparison.Ordinal);

    private static Rack Rack(RackId id, List<Load> loads, int tiers) => new()
    {
        Id = id,
        Name = "north",
        Reservoir = new Reservoir(CapacityL: 160, DepthMm: 400, FloorHeightMm: 20, NormalVolumeL: 140, PumpIntakeMm: 30),
        Pump = new Pump(loads[0].Id, new PumpCurve(ShutOffHeadM: 3.5, MaxFlowLpm: 60, Exponent: 2)),
        Supply = new SupplyRiser(BoreMm: 20, RunLengthMm: 1000, RunMinorLossK: 7.5, TeeMinorLossK: 0.3, HasCheckValve: true),
        Drain = new DrainStack(BoreMm: 40, CapacityLpm: 50),
        Tiers = [.. Enumerable.Range(1, tiers).Select(number => Tier(number, loads))],
        Schedule = new RackSchedule
        {
            Lights = [.. Enumerable.Repeat<Photoperiod?>(new Photoperiod(new LocalTime(6, 0), Duration.FromHours(16)), tiers)],
            Floods = new FloodPlan(
                new FloodsAt([new LocalTime(7, 0), new LocalTime(13, 0), new LocalTime(19, 0)]),
                new FillForTime(Duration.FromMinutes(5)), Duration.FromMinutes(5), Duration.FromMinutes(15), MissedFloods.RunOne),
            Runs = [new RunAlways(loads[1].Id), new RunAlways(loads[2].Id)],
        },
    };

    private static Tier Tier(int number, List<Load> loads) => new()
    {
        Number = number,
        TrayFloorHeightMm = 450 + 300 * (number - 1),
        Tray = new FloodTray(1120, 640, 85, 45, 26.6, 9.5, new TrayContents(4, "coir", 0.1, 40)),
        Branch = new SupplyBranch(BoreMm: 12.7, LengthMm: 250, MinorLossK: 20, OutletAboveTrayFloorMm: 60),
        Light = loads.Single(load => load.Kind == LoadKind.Light && load.TierNumber == number).Id,
        Valve = loads.Single(load => load.Kind == LoadKind.Valve && load.TierNumber == number).Id,
        PpfdUmolPerM2S = 180,
    };

    private static Load Load(int index, string name, LoadKind kind, double watts, int priority)
    {
        var safeOn = kind is LoadKind.Fan or LoadKind.Aerator;
        return new Load
        {
            Id = new LoadId(index),
            Name = name,
            Kind = kind,
            Rack = new RackId(0),
            Circuit = new CircuitId(0),
            PowerW = watts,
            Priority = priority,
            SafeState = safeOn ? SwitchState.On : SwitchState.Off,
            Contact = safeOn ? RelayContact.NormallyClosed : RelayContact.NormallyOpen,
        };
    }

    private static Sensor Contact(int index, string name, SensorKind kind) => new()
    {
        Id = new SensorId(index),
        Name = name,
        Kind = kind,
        PlausibleMin = 0,
        PlausibleMax = 1,
        StaleAfter = Duration.FromSeconds(2),
    };
}
