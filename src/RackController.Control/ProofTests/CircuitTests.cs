using System.Globalization;
using RackController.Model;

namespace RackController.Control;

/// <summary>The proof tests of what switches and measures current: relays, by a person's eyes, and current sensors, by what the
/// nameplates say.</summary>
internal static class CircuitTests
{
    // A nameplate states a rating and not what is drawn, and a sensor has its own error: common practice, no source.
    private const double NothingShare = 0.3;
    private const double LeastShare = 0.6;
    private const double MostShare = 1.4;

    /// <summary>Of the limits of all racks that draw from a circuit, for each the one that a proof test goes by: the shortest
    /// interval and the longest wait.</summary>
    public static InterlockLimits LimitsOf(Site site, CircuitId circuit)
    {
        var racks = site.Loads.Where(load => load.Circuit == circuit).Select(load => site[load.Rack].Limits)
            .DefaultIfEmpty(InterlockLimits.Default).ToList();
        return InterlockLimits.Default with
        {
            SupplySenseTestInterval = racks.Min(limits => limits.SupplySenseTestInterval),
            CurrentTestInterval = racks.Min(limits => limits.CurrentTestInterval),
            TestStepWithin = racks.Max(limits => limits.TestStepWithin),
            PumpRest = racks.Max(limits => limits.PumpRest),
            RelayRest = racks.Max(limits => limits.RelayRest),
        };
    }

    /// <summary>The test of a relay. A valve is tested while its pump stands still, so that no pump runs against a closed one.</summary>
    public static ProofTestItem OfRelay(Site site, Load load)
    {
        var isPump = load.Kind == LoadKind.Pump;
        var step = (string words, SwitchState state) => isPump
            ? new ProofTestStep(words) { Pumps = [(load.Id, state)] }
            : new ProofTestStep(words)
            {
                Pumps = load.Kind == LoadKind.Valve ? [(site[load.Rack].Pump.Load, SwitchState.Off)] : [],
                Loads = [(load.Id, state)],
            };
        return new ProofTestItem(
            load.Name, ProofTestKind.Relay, Place.Of(site[load.Rack]), site[load.Rack].Limits.RelayTestInterval,
            Pace(site[load.Rack].Limits, isPump),
            [
                step(isPump ? "no flood is under way: does the pump stand still?" : "it is told off: is it off?", SwitchState.Off),
                step(isPump ? "ask for a flood: does the pump run?" : "it is told on: is it on?", SwitchState.On),
            ]);
    }

    /// <summary>The test of a sensor of current, by the largest load that it measures; by a pump only where there is nothing
    /// else.</summary>
    /// <param name="site">The site.</param>
    /// <param name="sensor">The sensor.</param>
    /// <param name="circuit">The circuit that it is looked at with.</param>
    /// <param name="measured">The loads whose current it measures, at least one.</param>
    /// <param name="levels">Where every value that it is compared with is named.</param>
    public static ProofTestItem OfCurrent(
        Site site, Sensor sensor, Circuit circuit, IEnumerable<Load> measured, ICollection<SensorLevel> levels)
    {
        var loads = measured
            .OrderBy(load => load.Kind == LoadKind.Pump).ThenByDescending(load => load.CurrentA(circuit.VoltageV)).ToList();
        var probe = loads[0];
        var isPump = probe.Kind == LoadKind.Pump;
        var ratedA = probe.CurrentA(circuit.VoltageV);
        var (nothing, least, most) = (
            new Limit(sensor.Id, NothingShare * ratedA, levels), new Limit(sensor.Id, LeastShare * ratedA, levels),
            new Limit(sensor.Id, MostShare * ratedA, levels));
        var step = (string words, Load? on, Func<Facts, bool> shows) => new ProofTestStep(words)
        {
            Pumps = [.. Told(loads.Where(load => load.Kind == LoadKind.Pump), on)],
            Loads = [.. Told(loads.Where(load => load.Kind != LoadKind.Pump), on)],
            Shows = facts => facts.IsKnown(sensor.Id) && shows(facts),
        };
        return new ProofTestItem(
            sensor.Name, ProofTestKind.CurrentSensor, Place.Of(circuit), LimitsOf(site, circuit.Id).CurrentTestInterval,
            Pace(LimitsOf(site, circuit.Id), isPump),
            [
                step($"with everything off that it measures, it must read below {Amperes(nothing)}", null,
                    facts => facts.IsBelow(nothing)),
                step($"with only {probe.Name} on{(isPump ? ", in a flood," : ",")} it must read {Amperes(least)} to {Amperes(most)}", probe,
                    facts => facts.IsAbove(least) && facts.IsBelow(most)),
            ]);
    }

    private static IEnumerable<(LoadId, SwitchState)> Told(IEnumerable<Load> loads, Load? on) =>
        loads.Select(load => (load.Id, load == on ? SwitchState.On : SwitchState.Off));

    // A flood begins after the pump's rest at the latest, and one that is under way is over by then; a relay after its own.
    private static ProofTestPace Pace(InterlockLimits limits, bool waitsForFlood) => new(
        limits.TestStepWithin, limits.TestStepWithin + (waitsForFlood ? limits.PumpRest * 2 : limits.RelayRest));

    private static string Amperes(Limit limit) => string.Create(CultureInfo.InvariantCulture, $"{limit.Value:0.00} A");
}
