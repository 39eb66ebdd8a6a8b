using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>What a person is told to do with each thing that is wired.</summary>
internal static class WiringWords
{
    /// <summary>What to do with a contact, so that it turns to both of its sides.</summary>
    public static string Move(Sensor contact) => contact.Kind switch
    {
        SensorKind.LeakRope => "With every load's plug pulled, wet it with a drop of water, then dry it.",
        SensorKind.SupplySense => "Open the breaker of its circuit, then close it. A board that the circuit feeds goes dark with it.",
        _ => $"With every load's plug pulled, lift this float with {HandsInWords.Rod}, and let it sink again.",
    };

    /// <summary>What is about to happen to a load.</summary>
    public static string Announce(Load load, bool hasLowFloat) =>
        $"It {(load.SafeState == SwitchState.On ? "goes off" : "goes on alone")} for {WiringGuards.Longest.TotalSeconds:0} s. "
        + (load.Kind != LoadKind.Pump ? "Hands off the rack, and look."
            : hasLowFloat ? "Water must stand over it, and hands stay out of the trays."
            : "No float guards it: go on only if you see water over it. Hands stay out of the trays.");

    /// <summary>What a person is asked after a load was switched.</summary>
    public static string Ask(WiringItem item) => item switch
    {
        WiredContactor contactor => $"Did everything on {contactor.Circuit.Name} go dark, and nothing else?",
        WiredLoad { Load.SafeState: SwitchState.On } load => $"Did {load.Name}, and nothing else, go off and come back?",
        _ => $"Did {item.Name}, and nothing else, go on and off?",
    };

    /// <summary>Where the rack file has something on the board; empty on a simulated rack.</summary>
    public static string Place(IoPlan plan, WiringItem item) => (plan as GpioIo, item) switch
    {
        (null, _) => "",
        ({ } lines, WiredLoad { Load.Id: var load }) => lines.Relays.Where(relay => relay.Load == load)
            .Select(relay => Line(relay.Line, relay.ActiveLow)).FirstOrDefault(""),
        ({ } lines, WiredContactor { Circuit.Id: var circuit }) => lines.Contactors.Where(contactor => contactor.Circuit == circuit)
            .Select(contactor => Line(contactor.Line, contactor.ActiveLow)).FirstOrDefault(""),
        ({ } lines, WiredSensor { Sensor.Id: var sensor }) => lines.Contacts.Where(contact => contact.Sensor == sensor)
            .Select(contact => Line(contact.Line, contact.ActiveLow))
            .Concat(lines.Probes.Where(probe => probe.Sensor == sensor).Select(Part)).FirstOrDefault("not wired by the rack file"),
        _ => throw new InvariantBrokenException($"every item has its place, {item.GetType().Name} too"),
    };

    /// <summary>What a sensor says now.</summary>
    public static string Now(Sensor sensor, in Reading reading, MonotonicTime now, ShownUnits units) => reading.Quality switch
    {
        ReadingQuality.Missing => "It has not said anything yet.",
        ReadingQuality.Corrupt => "It does not answer, its bus reports an error, or what it says cannot be: `doctor` says which.",
        _ when now > reading.TakenAt + sensor.StaleAfter => "It is silent.",
        _ => $"It says: {ReadingWords.Value(sensor.Kind, reading.Value, units)}.",
    };

    private static string Line(GpioLine line, bool activeLow) =>
        $"line {line.Which} of '{line.Chip}', active {(activeLow ? "low" : "high")}";

    private static string Part(Probe probe) => probe switch
    {
        OneWireProbe wire => $"1-wire {wire.Code}",
        PulseProbe pulse => $"line {pulse.Line.Which} of '{pulse.Line.Chip}'",
        AnalogueProbe one => $"input {one.Input} of '{one.Part.Name}'",
        _ => $"'{probe.Carrier!.Name}'",
    };
}
