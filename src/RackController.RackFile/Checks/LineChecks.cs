using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>Every relay and contact has a line of its own.</summary>
internal static class LineChecks
{
    public static void Run(SitePart site, Complaints complaints)
    {
        var loads = site.Racks.SelectMany(rack => rack.Loads.Select(load =>
            new Wire($"{rack.Name}/{load.ShortName}", load.Place, load.Line, IsOutput: true, MustRest: load.Kind == LoadKind.Pump)));
        var sensors = site.Racks
            .SelectMany(rack => rack.AllSensors.Select(sensor => (Owner: rack.Name, Sensor: sensor)))
            .Concat(site.Circuits.SelectMany(circuit =>
                circuit.Sensors.Sensors.Select(sensor => (Owner: circuit.Name, Sensor: sensor))))
            .ToArray();
        var contacts = sensors.Where(one => one.Sensor.IsContact)
            .Select(one => new Wire(NameOf(one.Owner, one.Sensor), one.Sensor.Place, one.Sensor.Line, IsOutput: false));
        var contactors = site.Circuits.Where(circuit => circuit.Contactor is not null)
            .Select(circuit => new Wire(
                $"{circuit.Name}/contactor", circuit.Contactor!.Place, circuit.Contactor.Line, IsOutput: true, MustRest: true));
        var gpio = site.Io as GpioIoPart;
        var heartbeat = gpio?.Heartbeat is { } line ? [new Wire("the heartbeat", line.Place, line, IsOutput: false)] : Array.Empty<Wire>();
        var meters = sensors.Where(one => one.Sensor.Probe?.Line is not null)
            .Select(one => new Wire(NameOf(one.Owner, one.Sensor), one.Sensor.Place, one.Sensor.Probe!.Line, IsOutput: false));
        var wires = loads.Concat(contacts).Concat(contactors).Concat(heartbeat).Concat(meters).ToArray();
        RefuseShared(wires, gpio?.Chip, complaints);
        if (gpio is null)
        {
            return;
        }

        foreach (var wire in wires.Where(wire => wire.Line is null))
        {
            complaints.Refuse(
                wire.Place, $"{wire.Name} has no line, and the I/O is gpio",
                "write `line:` with the offset or name of its line on the chip, or `io: simulated`");
        }

        ProbeChecks.RunParts(gpio, complaints);
        foreach (var wire in wires.Where(wire => wire.Line is not null))
        {
            CheckOnPart(wire, gpio, complaints);
        }

        foreach (var (owner, sensor) in sensors)
        {
            CheckSensor(NameOf(owner, sensor), sensor, gpio, complaints);
        }
    }

    private static void CheckOnPart(Wire wire, GpioIoPart gpio, Complaints complaints)
    {
        var chip = wire.Line!.Chip ?? gpio.Chip;
        if (gpio.Parts.FirstOrDefault(part => part.Part.Name == chip) is not { Part: var part })
        {
            // It may be a second chip of the board, which only the board knows.
            if (wire.Line.Chip is { } named && NearestName.Of(named, gpio.Parts.Select(one => one.Part.Name)) is { } near)
            {
                complaints.Warn(
                    wire.Line.Place, $"{wire.Name} is on a chip `{named}`, and there is no such part", $"did you mean `{near}`?");
            }

            return;
        }

        var lines = part.Kind.RelayLines();
        if (!wire.IsOutput)
        {
            complaints.Refuse(
                wire.Line.Place, $"{wire.Name} is on {part.Name}, and does not wait for a bus",
                "put it on a line of the board");
        }
        else if (wire.Line.Line.Offset is not { } offset || offset >= lines)
        {
            complaints.Refuse(
                wire.Line.Place, $"{wire.Name} is on line {wire.Line.Line} of {part.Name}",
                lines == 0 ? "that part has no lines for relays" : $"that part has lines 0 to {lines - 1}");
        }
        else if (part.Kind.IsHighAtPowerOn() && !(wire.Line.ActiveLow ?? gpio.RelaysActiveLow))
        {
            complaints.Refuse(
                wire.Line.Place, $"{wire.Name} is active high on {part.Name}, whose lines are all high from the moment it has power",
                "use a relay board that is active low, or an mcp23017");
        }
        else if (wire.MustRest)
        {
            complaints.Warn(
                wire.Line.Place, $"{wire.Name} is on {part.Name}, which keeps its last level when the controller dies",
                "put it on a line of the board, whose pull lets the relay rest");
        }
    }

    private static void RefuseShared(Wire[] wires, string? usualChip, Complaints complaints)
    {
        var byLine = wires
            .Where(wire => wire.Line is not null)
            .GroupBy(wire => (Chip: wire.Line!.Chip ?? usualChip, wire.Line.Line));
        foreach (var shared in byLine)
        {
            var first = shared.First();
            foreach (var other in shared.Skip(1))
            {
                complaints.Refuse(
                    other.Line!.Place, $"{other.Name} is on line {shared.Key.Line}, where {first.Name} is already",
                    "give each relay and contact a line of its own");
            }
        }
    }

    private static void CheckSensor(string name, SensorPart sensor, GpioIoPart gpio, Complaints complaints)
    {
        if (!sensor.IsContact)
        {
            ProbeChecks.Run(name, sensor, gpio, complaints);
        }
        else
        {
            BrokenWireChecks.Run(name, sensor, gpio, complaints);
        }
    }

    private static string NameOf(string? owner, SensorPart sensor) => sensor.TierNumber is { } tier
        ? $"{owner}/tier {tier} {sensor.ShortName}"
        : $"{owner}/{sensor.ShortName}";

    private sealed record Wire(string Name, Place Place, LinePart? Line, bool IsOutput, bool MustRest = false);
}
