using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>Every sensor that measures a value is read from a part that can measure it.</summary>
internal static class ProbeChecks
{
    /// <summary>Checks the parts of a site.</summary>
    public static void RunParts(GpioIoPart io, Complaints complaints)
    {
        foreach (var (part, others) in io.Parts.Select((part, index) => (part, io.Parts.Take(index))))
        {
            if (others.Any(other => other.Part.Name == part.Part.Name))
            {
                complaints.Refuse(part.Place, $"a second part is called {part.Part.Name}", "give each part a name of its own");
            }
            else if (part.Part.Name.All(char.IsAsciiDigit))
            {
                complaints.Refuse(
                    part.Place, $"a part is called {part.Part.Name}, which as a relay's `chip` is a chip of the board",
                    "give it a name with a letter");
            }
            else if (others.FirstOrDefault(other => IsSamePlace(other.Part, part.Part)) is { } same)
            {
                complaints.Refuse(
                    part.Place,
                    $"{part.Part.Name} is at address 0x{part.Part.Address:x2} of bus {part.Part.Bus}, where {same.Part.Name} is already",
                    "give each part its own address, by its bridges, or put it on another bus");
            }
        }
    }

    /// <summary>Checks one sensor that measures a value.</summary>
    /// <param name="name">Its name, for people.</param>
    /// <param name="sensor">The sensor.</param>
    /// <param name="io">Where the parts are.</param>
    /// <param name="complaints">Where to say what is wrong.</param>
    public static void Run(string name, SensorPart sensor, GpioIoPart io, Complaints complaints)
    {
        if (sensor.Probe is not { } probe)
        {
            complaints.Warn(
                sensor.Place, $"nothing says how {name} is read",
                "its reading will be unknown; name its `part:`, or remove it if nothing needs it");
        }
        else if (WaysToRead(probe) != 1)
        {
            complaints.Refuse(
                probe.Place, $"{name} is not read in one way",
                "name its `part:`, or its `one-wire:` thermometer or the `line:` of its meter where it may have one");
        }
        else if ((probe.Line is null) != (probe.PulsesPerL is null))
        {
            complaints.Refuse(
                probe.Place, $"{name} lacks either the line of its meter or the pulses that it gives for a litre",
                "write both, such as `line: 20` and `pulses-per-litre: 450`");
        }
        else if (probe.PartName is { } partName)
        {
            RunOnPart(name, sensor.Kind, probe, partName, io, complaints);
        }
        else if (probe.Input is not null || !probe.Points.IsEmpty)
        {
            var other = probe.Line is null ? "a 1-wire thermometer" : "a meter on a line";
            complaints.Refuse(probe.Place, $"{name} has an input or points, and {other} has neither", "remove them");
        }
    }

    private static void RunOnPart(
        string name, SensorKind kind, ProbePart probe, string partName, GpioIoPart io, Complaints complaints)
    {
        if (io.Parts.FirstOrDefault(part => part.Part.Name == partName) is not { Part: var part })
        {
            complaints.Refuse(
                probe.Place, $"{name} is read from {Quote.Text(partName)}, and the I/O section has no such part",
                NearestName.Advice(partName, [.. io.Parts.Select(one => one.Part.Name)]));
        }
        else if (WhatMeasures(kind) is var cure && !part.Kind.Measures(kind) && !(cure is null && part.Kind.IsConverter()))
        {
            complaints.Refuse(
                probe.Place, $"{name} is read from {partName}, which cannot measure that", cure ?? "read it by an `ads1115`");
        }
        else if (part.Kind.IsConverter() && (probe.Input is null || probe.Points.Length < 2))
        {
            complaints.Refuse(
                probe.Place, $"{name} lacks the input of {partName}, or two points that say what its voltages stand for",
                "write `input: 0` and `points: [{ at: 0.5 V, is: ... }, { at: 2.5 V, is: ... }]`");
        }
        else if (probe.Points.Zip(probe.Points.Skip(1)).Any(pair => pair.Second.VoltageV <= pair.First.VoltageV))
        {
            complaints.Refuse(probe.Place, $"the points of {name} do not rise in voltage", "write them in rising order, each voltage once");
        }
    }

    // What a part measures by itself takes that part; the rest is read by a converter.
    private static string? WhatMeasures(SensorKind kind) => kind switch
    {
        SensorKind.AirTemperature or SensorKind.AirHumidity => "read the air by an `sht3x` or a `bme280`",
        SensorKind.LightLevel => "read light by a `bh1750`",
        _ => null,
    };

    private static int WaysToRead(ProbePart probe) =>
        (probe.PartName is null ? 0 : 1) + (probe.OneWireCode is null ? 0 : 1) + (probe.Line is null ? 0 : 1);

    private static bool IsSamePlace(BusPart one, BusPart other) => one.Bus == other.Bus && one.Address == other.Address;
}
