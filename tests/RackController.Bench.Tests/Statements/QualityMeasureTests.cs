using RackController.Bench.Tests.Support;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench.Tests.Statements;

public sealed class QualityMeasureTests
{
    private static readonly RackId Rack = new(0);

    public static TheoryData<Measure, RackQuantity, string> Measures => new()
    {
        { new DissolvedOxygen(Rack), RackQuantity.DissolvedOxygen, "the oxygen in the reservoir of north is above 5 mg/L" },
        { new Conductivity(Rack), RackQuantity.Conductivity, "the conductivity of the reservoir of north is above 5 mS/cm" },
        { new WaterTemperature(Rack), RackQuantity.WaterTemperature, "the temperature of the water of north is above 5 C" },
        { new AirHumidity(Rack, 2), RackQuantity.AirHumidity, "the humidity of the air at north/tier 2 is above 5 %" },
        { new VapourDeficit(Rack, 2), RackQuantity.VapourDeficit, "the vapour pressure deficit at north/tier 2 is above 5 kPa" },
    };

    [Theory]
    [MemberData(nameof(Measures), DisableDiscoveryEnumeration = true)]
    public void AMeasureIsWhatTheRackIsAndIsWatchedWhereItTurns(Measure measure, RackQuantity quantity, string words)
    {
        var now = new FakeObserved();
        var statement = new Measures(measure, new Above(5));
        now.Quantities[quantity] = 6;
        Assert.Equal(Truth.Yes, statement.Judge(now));
        now.Quantities[quantity] = 4;
        Assert.Equal(Truth.No, statement.Judge(now));
        Assert.Equal(words, statement.Words(now.Site));
        var level = Assert.Single(statement.Levels(now.Site));
        Assert.Equal((quantity, 5.0), (level.Quantity, level.Level));
    }

    [Fact]
    public void AnAeratorHasToDoWithOxygenAndAFanWithHumidity()
    {
        var site = new FakeObserved().Site;
        Assert.True(new DissolvedOxygen(Rack).Concerns(site, "north/aerator"));
        Assert.False(new DissolvedOxygen(Rack).Concerns(site, "north/tier 1 light"));
        Assert.True(new AirHumidity(Rack, 1).Concerns(site, "north/fan"));
    }

    [Theory]
    [InlineData("oxygen: below 6 mg/L", 6)]
    [InlineData("conductivity: below 1400 µS/cm", 1.4)]
    [InlineData("water: below 24 °C", 24)]
    public void AScenarioWritesThemWithTheirUnits(string key, double limit)
    {
        var reading = Scenes.Read($"start: 2026-03-02 00:00\nlength: 1 d\nexpect:\n  - that: x\n    never: {{ rack: north, {key} }}\n");
        var never = Assert.IsType<Never>(Assert.Single(reading.Scenario!.Expectations));
        Assert.Equal(limit, Assert.IsType<Below>(Assert.IsType<Measures>(never.What).Compared).Limit, 1e-9);
    }
}
