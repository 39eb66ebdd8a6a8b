using RackController.Plant;
using RackController.Testing;

namespace RackController.Bench.Tests.Scenarios;

public sealed class ShippedScenarioTests
{
    public static TheoryData<string> Names =>
        [.. Directory.GetFiles(ShippedFiles.PathTo("config/scenarios"), "*.yaml").Select(file => Path.GetFileName(file)!).Order()];

    [Theory]
    [MemberData(nameof(Names))]
    public void AShippedScenarioHoldsWithTheEarliestBreakers(string name) => Holds(name, BreakerEdge.Fast);

    [Theory]
    [MemberData(nameof(Names))]
    public void AShippedScenarioHoldsWithTheLatestBreakers(string name) => Holds(name, BreakerEdge.Slow);

    [Fact]
    public void TheScenariosThatAGrowerIsPromisedAreThere() => Assert.Superset(
        new HashSet<string>
        {
            "first-week.yaml", "dst-spring.yaml", "dst-autumn.yaml", "breaker-trip-at-noon.yaml", "pump-never-stops.yaml",
            "reservoir-runs-dry.yaml", "float-stuck.yaml", "clock-jumps-back.yaml", "boot-without-clock.yaml",
            "hands-in-the-rack.yaml", "aerator-dies.yaml", "brown-out.yaml", "wet-light.yaml",
            "hose-bursts.yaml", "hot-cellar.yaml", "light-stays-on.yaml", "pump-gives-nothing.yaml", "pump-relay-welds.yaml",
        },
        Directory.GetFiles(ShippedFiles.PathTo("config/scenarios")).Select(file => Path.GetFileName(file)!).ToHashSet());

    // An accepted hazard that no longer shows would be an excuse for nothing.
    [Theory]
    [InlineData("pump-never-stops.yaml", HazardKind.PumpPastItsMaximumRun)]
    public void AnAcceptedHazardReallyShows(string name, HazardKind kind)
    {
        var scenario = ScenarioReader.Read(ShippedFiles.PathTo($"config/scenarios/{name}")).Scenario!;
        Assert.Contains(ScenarioRun.Run(scenario).Hazards, hazard => hazard.Kind == kind);
        Assert.False(ScenarioRun.Run(scenario with { Accepts = [] }).Passed);
    }

    private static void Holds(string name, BreakerEdge breakers)
    {
        var reading = ScenarioReader.Read(ShippedFiles.PathTo($"config/scenarios/{name}"));
        Assert.True(reading.Scenario is not null, string.Join('\n', reading.Complaints));
        var result = ScenarioRun.Run(reading.Scenario with { Found = reading.Scenario.Found with { Breakers = breakers } });

        var broken = result.Verdicts.Where(verdict => !verdict.IsMet)
            .Select(verdict => $"{verdict.Expectation.Name}: {verdict.Failure!.Seen}")
            .Concat(result.Hazards.Where(hazard => result.Acceptance(hazard) is null).Select(hazard => hazard.Seen));
        Assert.Empty(broken);
        Assert.True(result.Passed);
    }
}
