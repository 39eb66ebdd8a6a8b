using System.Collections.Immutable;
using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Testing;

/// <summary>Random whole sites: one to three racks on one circuit or two, with any sensors and loads that Model knows.</summary>
public static class RandomSites
{
    private static readonly string[] names = ["north", "south", "west"];

    /// <summary>Any site.</summary>
    public static Gen<Site> Any { get; } =
        from circuits in Circuits
        from racks in Gen.Frequency((5, RackDraft.Any.Array[1]), (1, RackDraft.Any.Array[2, 3]))
        from periodMs in Gen.Frequency((6, Gen.Const(100)), (1, Gen.OneOf(20, 50, 70, 250, 1000)))
        select Assemble(circuits, racks) with
        {
            Scan = new ScanTiming(Duration.FromMilliseconds(periodMs), Duration.FromMilliseconds(Math.Max(1000, 3 * periodMs))),
        };

    private static Gen<(Circuit Circuit, bool HasSense, bool HasCurrent)[]> Circuits => (
        from voltageV in Gen.OneOf(120.0, 230.0)
        from breakerA in RandomParts.Mostly(3, 20, 1, 63)
        from hasSense in Gen.Bool
        from hasCurrent in Gen.Bool
        from hasContactor in Gen.Bool
        select (
            new Circuit
            {
                Id = default,
                Name = "",
                VoltageV = voltageV,
                BreakerA = breakerA,
                ContinuousLimitA = Circuit.ContinuousShare * breakerA,
                HasUpstreamContactor = hasContactor,
            },
            hasSense, hasCurrent)).Array[1, 2];

    /// <summary>Gives every part its number and name.</summary>
    /// <param name="circuits">The circuits, and what is measured at each.</param>
    /// <param name="drafts">The racks.</param>
    private static Site Assemble((Circuit Circuit, bool HasSense, bool HasCurrent)[] circuits, RackDraft[] drafts)
    {
        var parts = new SiteParts(circuits.Length);
        var racks = drafts.Select((draft, index) => parts.Rack(draft, new RackId(index), names[index])).ToImmutableArray();
        return new Site
        {
            Name = "random cellar",
            Zone = DateTimeZoneProviders.Tzdb["America/New_York"],
            Circuits = [.. circuits.Select((circuit, index) => parts.Circuit(circuit, new CircuitId(index)))],
            Racks = racks,
            Loads = [.. parts.Loads],
            Sensors = [.. parts.Sensors],
            Io = new SimulatedIo(),
        };
    }
}
