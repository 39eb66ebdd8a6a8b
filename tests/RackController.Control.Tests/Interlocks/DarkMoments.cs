using NodaTime;
using RackController.Control.Tests.Currents;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>What the tests of row weld-check set up and look for.</summary>
internal static class DarkMoments
{
    /// <summary>Lights that draw twenty times as much as the pump.</summary>
    public static Site Bright(Site site) => site with
    {
        Loads = [.. site.Loads.Select(load => load.Kind == LoadKind.Light ? load with { PowerW = 500 } : load)],
    };

    /// <summary>No floods, and lights that come on one soon after the other.</summary>
    public static Site WithoutFloods(Site site) => site.WithSchedule(plan => plan with
    {
        LightStagger = Duration.FromMinutes(1),
        Floods = plan.Floods with { Times = new NoFloods() },
    });

    /// <summary>A circuit an hour after its start, with nothing left to ask.</summary>
    public static LiveCircuit Quiet(Func<Site, Site> change)
    {
        var circuit = new LiveCircuit(change);
        circuit.Rig.LeapFor(Duration.FromHours(1));
        return circuit;
    }

    /// <summary>When a load was looked for.</summary>
    public static List<MonotonicTime> ChecksOf(LiveCircuit circuit, string load) =>
    [
        .. circuit.Rig.Events
            .Where(each => each is { Subject: "north/aerator", What: "off" } && each.Because.Contains(load, StringComparison.Ordinal))
            .Select(each => each.At.Monotonic),
    ];
}
