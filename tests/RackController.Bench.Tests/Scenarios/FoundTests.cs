using RackController.Bench.Tests.Support;
using RackController.Plant;

namespace RackController.Bench.Tests.Scenarios;

public sealed class FoundTests
{
    private const string Rest =
        "start: 2026-03-02 00:00\nlength: 1 d\nexpect:\n  - that: x\n    never: { rack: north, spilled: above 1 L }\n";

    [Fact]
    public void AScenarioSaysHowTheRackIsFound()
    {
        var found = Scenes.Read(
            "found: { crop: seedlings, solution: 1400 µS/cm, top-up: 0.5 mS/cm, water: 22 °C, altitude: 1200 m }\n" + Rest).Scenario!.Found;
        Assert.Equal(0.7, found.CropFactor);
        Assert.Equal(1.4, found.ConductivityMsPerCm, 1e-9);
        Assert.Equal(0.5, found.TopUpMsPerCm);
        Assert.Equal(22, found.WaterC, 1e-9);
        Assert.Equal(1200, found.AltitudeM, 1e-9);
    }

    [Fact]
    public void WithoutAWordItIsFoundAsUsual() => Assert.Equal(PlantStart.Default, Scenes.Read(Rest).Scenario!.Found);

    [Fact]
    public void SeedlingsDrinkLessThanAFullCanopy()
    {
        var seedlings = Scenes.Run("found: { crop: seedlings }\n" + Rest).Racks[0].WaterUsedL;
        var canopy = Scenes.Run("found: { crop: full canopy }\n" + Rest).Racks[0].WaterUsedL;
        Assert.InRange(seedlings, 0.6 * canopy, 0.9 * canopy);
    }

    [Theory]
    [InlineData("found: { crop: weeds }\n", "`weeds`")]
    [InlineData("found: { solution: 9 mS/cm }\n", "outside")]
    [InlineData("found: { salt: 3 mS/cm }\n", "no key")]
    public void WhatCannotBeIsSaid(string text, string what) => Assert.Contains(
        Scenes.Read(text + Rest).Complaints, complaint => complaint.What.Contains(what, StringComparison.Ordinal));
}
