using RackController.Model;

namespace RackController.RackFile.Tests;

public sealed class DemoFileTests
{
    [Theory]
    [InlineData("demo-first-rack.yaml")]
    [InlineData("demo-four-tier.yaml")]
    [InlineData("demo-three-racks.yaml")]
    public void ADemoFileLoadsWithoutAnyComplaint(string name)
    {
        var result = RackFileReader.Read(Files.Config(name));

        Assert.Equal([], result.Complaints.Select(complaint => complaint.ToString()));
        Assert.NotNull(result.Site);
    }

    [Theory]
    [InlineData("demo-first-rack.yaml")]
    [InlineData("demo-four-tier.yaml")]
    [InlineData("demo-three-racks.yaml")]
    public void ADemoFileNamesItsSchemaInItsFirstComment(string name) =>
        Assert.Equal("# yaml-language-server: $schema=./rack-file.schema.json", File.ReadLines(Files.Config(name)).First());

    [Fact]
    public void AFirstFileIsShort() =>
        Assert.InRange(File.ReadLines(Files.Config("demo-first-rack.yaml")).Count(line => line.Length > 0), 10, 40);

    /// <summary>Common practice, no source: 3-, 4- and 5-tier racks with everything on draw about 3.5, 5 and 6.8 A
    /// at 120 V.</summary>
    [Theory]
    [InlineData("herbs", 3.5)]
    [InlineData("greens", 5.0)]
    [InlineData("shoots", 6.8)]
    public void ARackWithEverythingOnDrawsWhatSuchRacksDo(string name, double usualA)
    {
        var site = RackFileReader.Read(Files.Config("demo-three-racks.yaml")).Site!;
        var rack = site.Racks.Single(one => one.Name == name);

        var allA = site.Loads.Where(load => load.Rack == rack.Id).Sum(load => load.CurrentA(site[load.Circuit].VoltageV));

        Assert.InRange(allA, usualA * 0.95, usualA * 1.05);
    }

    /// <summary>NEC 210.20(A), as quoted in a conductor ampacity data bulletin of productinfo.schneider-electric.com: a breaker
    /// carries at least 125 % of the continuous load, so 15 A give 12 A and 20 A give 16 A.</summary>
    [Theory]
    [InlineData("15 A", 12)]
    [InlineData("20 A", 16)]
    public void ABreakerCarriesFourFifthsOfItsRatingForHours(string breaker, double expectedA)
    {
        var site = Expect.Site(RackFiles.Small.Replace("breaker: 15 A", $"breaker: {breaker}", StringComparison.Ordinal));

        Assert.Equal(expectedA, site.Circuits.Single().ContinuousLimitA, 1e-9);
    }

    [Fact]
    public void TheThreeRacksShareTwoCircuitsInAnAmericanZone()
    {
        var site = RackFileReader.Read(Files.Config("demo-three-racks.yaml")).Site!;

        Assert.Equal("America/Chicago", site.Zone.Id);
        Assert.Equal([3, 4, 5], site.Racks.Select(rack => rack.Tiers.Length));
        Assert.Equal([120.0, 120.0], site.Circuits.Select(circuit => circuit.VoltageV));
        Assert.All(site.Circuits, circuit => Assert.NotNull(circuit.SupplySense));
        Assert.IsType<SimulatedIo>(site.Io);
    }
}
