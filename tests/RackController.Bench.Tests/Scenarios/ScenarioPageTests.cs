using RackController.Bench.Binding;
using RackController.Plant;
using RackController.Testing;

namespace RackController.Bench.Tests.Scenarios;

/// <summary>The page that explains scenarios leaves out no word that a scenario may use.</summary>
public sealed class ScenarioPageTests
{
    private static readonly string Page = File.ReadAllText(ShippedFiles.PathTo("config/scenarios/README.md"));

    [Fact]
    public void EveryFaultIsNamed() => Assert.All(
        Enum.GetValues<FaultKind>(), kind => Assert.Contains(FaultNames.Of(kind), Page, StringComparison.Ordinal));

    [Fact]
    public void EveryRequestIsNamed() => Assert.All(
        Enum.GetValues<RequestKind>(), kind => Assert.Contains(RequestMaker.Word(kind), Page, StringComparison.Ordinal));

    [Fact]
    public void EveryHazardIsNamed() => Assert.All(
        Enum.GetValues<HazardKind>(), kind => Assert.Contains(HazardWords.Key(kind), Page, StringComparison.Ordinal));

    [Fact]
    public void EveryKeyIsNamed()
    {
        var names = new SiteNames(Sites.OneRack());
        var time = new ScenarioTimeKind(names.Site.Zone, NodaTime.Instant.FromUtc(2026, 3, 2, 0, 0));
        var statement = new StatementMapping(names, []);
        var keys = statement.Keys.Concat(new EventMapping(names, time).Keys)
            .Concat(new ScenarioMapping("", names.Site, NodaTime.Instant.MinValue, []).Keys)
            .Concat(new ExpectationMapping(statement, time).Keys)
            .Concat(new FoundMapping().Keys).Concat(new RoomPointMapping().Keys);
        Assert.All(keys, key => Assert.Contains($"{key.Name}:", Page, StringComparison.Ordinal));
    }
}
