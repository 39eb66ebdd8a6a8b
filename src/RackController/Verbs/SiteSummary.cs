using RackController.Bench;
using RackController.Growing;
using RackController.Model;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>What was understood of a rack file, so that a person can see whether it is what was meant.</summary>
internal static class SiteSummary
{
    /// <summary>Prints it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="path">Its file.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(Site site, string path, IAnsiConsole console)
    {
        console.WriteLine($"{path} is right.");
        console.WriteLine($"{site.Name}, {site.Zone.Id}, {Io(site)}");
        foreach (var circuit in site.Circuits)
        {
            Circuit(site, circuit, console);
        }

        foreach (var rack in site.Racks)
        {
            Rack(site, rack, console);
        }

        if (site.Racks.Any(rack => rack.Schedule.Floods.Times is not NoFloods))
        {
            console.WriteLine();
            Wrapped(FloodWording.Legend, console);
        }

        MissingPartsPage.Print(site, console);
        NoticesSummary.Print(site, console);
        console.WriteLine();
        console.WriteLine("Mains power and water together can kill. Ground-fault protection, wiring, breakers and floor");
        console.WriteLine("loading are for local codes and a licensed electrician to judge.");
    }

    private static void Wrapped(string text, IAnsiConsole console)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width))
        {
            console.WriteLine(line);
        }
    }

    private static string Io(Site site) => site.Io is GpioIo gpio
        ? $"{gpio.Relays.Length + gpio.Contactors.Length} relays and {gpio.Contacts.Length} contacts on a board"
        : "simulated";

    private static void Circuit(Site site, Circuit circuit, IAnsiConsole console)
    {
        var loads = site.Loads.Where(load => load.Circuit == circuit.Id).ToList();
        var peakA = loads.Sum(load => load.CurrentA(circuit.VoltageV));
        console.WriteLine();
        console.WriteLine(
            $"{circuit.Name}: {circuit.VoltageV:0} V, {circuit.BreakerA:0.#} A breaker, {circuit.ContinuousLimitA:0.#} A for hours");
        console.WriteLine(
            $"  everything on draws {peakA:0.0} A, {100 * peakA / circuit.ContinuousLimitA:0} % of that"
            + (peakA > circuit.ContinuousLimitA ? "; the controller sheds by priority, lights first" : ""));
        console.WriteLine(circuit.HasUpstreamContactor
            ? "  a contactor upstream cuts it when a pump's relay has welded"
            : "  no contactor upstream: a welded relay stays on until somebody pulls the plug");
    }

    private static void Rack(Site site, Rack rack, IAnsiConsole console)
    {
        var loads = site.Loads.Where(load => load.Rack == rack.Id).ToList();
        console.WriteLine();
        console.WriteLine(
            $"{rack.Name}: {rack.Tiers.Length} {(rack.Tiers.Length == 1 ? "tier" : "tiers")}, {loads.Count} loads, "
            + $"reservoir of {rack.Reservoir.CapacityL:0} L filled to {rack.Reservoir.NormalVolumeL:0} L");
        console.WriteLine($"  floods {FloodWords.Times(rack)}; {FloodWords.Cycle(rack.Schedule.Floods)}");
        foreach (var tier in rack.Tiers.Reverse())
        {
            console.WriteLine($"  tier {tier.Number}: {Light(rack, tier)}");
        }

        if (rack.Schedule.Floods.Times is not NoFloods)
        {
            console.WriteLine(rack.Measured is { } measured
                ? $"  a flood, simulated as measured on {measured.On:uuuu-MM-dd}:"
                : "  a flood, simulated:");
            FloodAdvisory.Print(FloodAdvice.Of(site, rack), console);
        }
    }

    private static string Light(Rack rack, Tier tier)
    {
        var photoperiod = rack.Schedule.Lights[tier.Number - 1];
        if (!tier.InUse)
        {
            return "out of use";
        }

        return photoperiod is null || tier.Light is null
            ? "dark"
            : $"lit {photoperiod.Length.TotalHours:0.##} h a day from {photoperiod.Start:HH:mm}, "
                + $"{DailyLight.MolPerM2(tier.PpfdUmolPerM2S, photoperiod.Length):0.0} mol/m2/d";
    }
}
