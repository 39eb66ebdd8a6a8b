using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Building;

/// <summary>Makes a site of a file that was found sound.</summary>
internal static class SiteBuilder
{
    /// <summary>Makes a site.</summary>
    /// <param name="part">As written, without any error.</param>
    public static Site Build(SitePart part)
    {
        var ledger = new Ledger(part.Circuits);
        var circuits = part.Circuits.Select((circuit, index) => Circuit(circuit, new CircuitId(index), ledger))
            .ToImmutableArray();
        var racks = part.Racks.Select((rack, index) => RackBuilder.Build(rack, new RackId(index), ledger, part.Upkeep)).ToImmutableArray();
        return new Site
        {
            Name = part.Name!,
            Zone = part.Zone!,
            Circuits = circuits,
            Racks = racks,
            Loads = ledger.Loads,
            Sensors = ledger.Sensors,
            Units = part.Units!,
            Scan = part.Scan!,
            Io = part.Io is GpioIoPart gpio ? Gpio(gpio, part, ledger) : new SimulatedIo(),
            Notices = part.Notices,
            Batches = part.Batches ?? BatchPolicy.Default,
        };
    }

    private static Circuit Circuit(CircuitPart part, CircuitId id, Ledger ledger)
    {
        var supply = part.Supply!;
        SensorId? sense = null;
        foreach (var sensor in part.Sensors.Sensors)
        {
            var sensorId = ledger.Add(
                sensor, part.Name!, PlausibleRange.AtCircuit(sensor.Kind, supply.BreakerA), circuit: id);
            sense = sensor.Kind == SensorKind.SupplySense ? sensorId : sense;
        }

        return new Circuit
        {
            Id = id,
            Name = part.Name!,
            VoltageV = supply.VoltageV,
            BreakerA = supply.BreakerA,
            ContinuousLimitA = supply.ContinuousLimitA,
            SupplySense = sense,
            HasUpstreamContactor = part.Contactor is not null,
        };
    }

    private static GpioIo Gpio(GpioIoPart gpio, SitePart part, Ledger ledger) => new(
        [.. ledger.LoadParts.Select((part, index) => new RelayLine(
            new LoadId(index), Line(gpio, part.Line!), part.Line!.ActiveLow ?? gpio.RelaysActiveLow))],
        [.. ledger.SensorParts.Index().Where(pair => pair.Item.IsContact).Select(pair => new ContactLine(
            new SensorId(pair.Index), Line(gpio, pair.Item.Line!), pair.Item.Line!.ActiveLow ?? gpio.ContactsActiveLow,
            pair.Item.Pull ?? gpio.Pull, pair.Item.Debounce ?? gpio.Debounce))])
    {
        Heartbeat = gpio.Heartbeat is { } heartbeat ? Line(gpio, heartbeat) : null,
        Expanders = [.. gpio.Parts.Select(part => part.Part).Where(part => part.Kind.RelayLines() > 0)],
        Probes =
        [
            .. ledger.SensorParts.Index().Where(pair => pair.Item.Probe is not null)
                .Select(pair => Probe(new SensorId(pair.Index), pair.Item.Probe!, gpio)),
        ],
        Contactors =
        [
            .. part.Circuits.Index().Where(pair => pair.Item.Contactor is not null).Select(pair => new ContactorLine(
                new CircuitId(pair.Index), Line(gpio, pair.Item.Contactor!.Line!),
                pair.Item.Contactor.Line!.ActiveLow ?? gpio.RelaysActiveLow)),
        ],
    };

    private static Probe Probe(SensorId sensor, ProbePart probe, GpioIoPart gpio)
    {
        if (probe.OneWireCode is { } code)
        {
            return new OneWireProbe(sensor, code);
        }

        if (probe.Line is { } line)
        {
            return new PulseProbe(sensor, Line(gpio, line), gpio.Pull, probe.PulsesPerL!.Value);
        }

        var part = gpio.Parts.Single(one => one.Part.Name == probe.PartName).Part;
        return part.Kind.IsConverter()
            ? new AnalogueProbe(sensor, part, probe.Input!.Value, probe.Points)
            : new PartProbe(sensor, part);
    }

    private static GpioLine Line(GpioIoPart gpio, LinePart line) => line.Line.On(line.Chip ?? gpio.Chip);
}
