using System.Collections.Immutable;
using System.Reflection;
using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Exploring;

/// <summary>Something that can be one way or another at a scan: a sensor, a load's last command, a fact of the rack, the scan
/// itself.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Ways">The ways that it can be, each as a change of what an interlock is told.</param>
internal sealed record Input(string Name, ImmutableArray<(string Name, Func<Surroundings, Surroundings> Set)> Ways);

/// <summary>Every input that the facts have, for any row: a new row's sensor or fact of the rack is found here by itself.</summary>
internal static class Inputs
{
    /// <summary>All inputs of a site.</summary>
    /// <param name="site">A site of one rack.</param>
    /// <param name="levels">The values that measured values are compared with.</param>
    public static ImmutableArray<Input> Of(Site site, ILookup<SensorId, double> levels) =>
    [
        .. site.Sensors.Select(sensor => new Input(sensor.Name,
        [
            .. Values(sensor, [.. levels[sensor.Id]]).Select(value => Way($"{value}", each => each.With(sensor.Id, value))),
            Way("unknown", each => each.With(sensor.Id, null)),
        ])),
        .. site.Loads.Select(load => Switch(load.Name, (each, isOn) => each.With(load.Id, isOn))),
        .. site.Loads.Select(load => new Input($"current of {load.Name}",
            [.. Enum.GetValues<Flow>().Select(flow => Way($"{flow}", each => each.With(load.Id, flow)))])),
        .. typeof(RackFacts).GetProperties().Where(property => property.PropertyType == typeof(bool))
            .Select(property => Switch(property.Name, (each, isSo) => each with { About = Set(each.About, property, isSo) })),
        new Input("fill",
        [
            .. Enum.GetValues<FillSight>()
                .Select(sight => Way($"{sight}", each => each with { About = each.About with { Fill = sight } })),
        ]),
        new Input("flood",
        [
            Way("begins", each => each with { About = each.About with { FloodNumber = each.About.FloodNumber + 1 } }),
            Way("is filled", each => each with { About = each.About with { FilledFlood = each.About.FloodNumber } }),
        ]),
        Switch("tier out of use", (each, isSo) => each with { About = each.About with { TiersOutOfUse = isSo ? 0b10UL : 0 } }),
        new Input("scan",
        [
            Way("good", each => each with { Conditions = ScanConditions.Good }),
            Way("late", each => each with { Conditions = ScanConditions.Good with { LateBy = Duration.FromMinutes(1) } }),
            Way("failing", each => each with { Conditions = ScanConditions.Good with { Io = new IoOutcome("the board is gone") } }),
        ]),
        new Input("proof tests",
        [
            Way("passed", each => each with { Tests = each.Tests with { PassedAt = each.Now.Wall } }),
            Way("overdue", each => each with { Tests = each.Tests with { PassedAt = Instant.MinValue } }),
        ]),
        Switch("a proof test failed", (each, isSo) => each with { Tests = each.Tests with { HasFailed = isSo } }),
        .. site.Sensors.Where(sensor => sensor.IsContact).Select(sensor => new Input($"proof test of {sensor.Name}",
        [
            Way("none", each => each with { Tests = each.Tests with { UnderWay = null } }),
            Way("under way", each => each with { Tests = each.Tests with { UnderWay = sensor.Id } }),
            Way("passed", each => each with { Tests = each.Tests with { UnderWay = null, JustPassed = sensor.Id } }),
        ])),
        new Input("clock",
        [
            .. new[] { 4, 5, -5 }.Select(minutes => Way($"set by {minutes} min", each => each with
            {
                Now = each.Now with { Wall = each.Now.Wall + Duration.FromMinutes(minutes) },
            })),
        ]),
        Switch("clock trusted", (each, isSo) => each with { Now = each.Now with { WallTrusted = isSo } }),
        Switch("cut", (each, isSo) => each with { IsCut = isSo }),
        Switch("shedding", (each, isSo) => each with { IsShedding = isSo }),
        new Input("hands",
        [
            Way("out", each => each with { HoldEndsAt = null }),
            Way("in", each => each with { HoldEndsAt = each.Now.Monotonic + Duration.FromSeconds(30) }),
        ]),
    ];

    // One value in each band between the levels, and each level itself.
    private static IEnumerable<double?> Values(Sensor sensor, double[] levels)
    {
        if (sensor.IsContact)
        {
            return [0, 1];
        }

        var within = levels.Where(level => level > sensor.PlausibleMin && level < sensor.PlausibleMax).Distinct().Order();
        double[] edges = [sensor.PlausibleMin, .. within, sensor.PlausibleMax];
        return [.. edges.Zip(edges.Skip(1)).SelectMany(pair => new double?[] { (pair.First + pair.Second) / 2, pair.Second }).SkipLast(1)];
    }

    private static (string, Func<Surroundings, Surroundings>) Way(string name, Func<Surroundings, Surroundings> set) => (name, set);

    private static Input Switch(string name, Func<Surroundings, bool, Surroundings> set) =>
        new(name, [Way("yes", each => set(each, true)), Way("no", each => set(each, false))]);

    private static RackFacts Set(RackFacts facts, PropertyInfo property, bool isSo)
    {
        object boxed = facts;
        property.SetValue(boxed, isSo);
        return (RackFacts)boxed;
    }
}
