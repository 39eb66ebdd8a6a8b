using RackController.Testing;

namespace RackController.PlanFiles.Tests;

public sealed class CropsReaderTests
{
    private const string One = """
        crops:
          - name: moss
            kind: microgreen
            soak: 0 h
            dark: 2 to 3 d
            stages: [{ days: 5 to 9 d, dli: 7 to 14 mol/m2/d, ppfd: 100 to 400 umol/m2/s, photoperiod: 12 to 18 h, floods: 1 to 3 }]
            seed: 10 g
            yield: 190 g
            keeps: 5 d
            air: 16 to 22 °C
        """;

    [Fact]
    public void CropsComeInTheOrderOfTheFile()
    {
        var crops = CropsReader.Read(ShippedFiles.PathTo("config/crops.yaml")).Crops;

        Assert.Equal(["amaranth", "arugula", "basil"], crops.Take(3).Select(crop => crop.Name));
        Assert.Equal("moss", Assert.Single(CropFiles.Read(One).Crops).Name);
    }

    [Fact]
    public void WhatIsMissingOrTwiceIsNamedWithItsPlace()
    {
        var read = CropFiles.Read($"{One}\n  - {{ name: moss }}\n  - {{ name: fern, yield: 9 g }}\n");

        Assert.False(read.IsRight);
        Assert.Collection(
            read.Complaints,
            twice => Assert.Equal((11, "the crop `moss` stands here a second time"), (twice.Line, twice.What)),
            bare => Assert.StartsWith("the crop `fern` lacks `kind`, `soak`", bare.What, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("config/demo-orders.yaml")]
    [InlineData("config/demo-four-tier.yaml")]
    public void AnotherFileInItsPlaceIsNamedAndNotPickedToPieces(string file) => Assert.Equal(
        "this is no crops file", Assert.Single(CropsReader.Read(ShippedFiles.PathTo(file)).Complaints).What);

    [Fact]
    public void ACropsFileInThePlaceOfOrdersIsNamedAndNotPickedToPieces() => Assert.Equal(
        "this is no orders file",
        Assert.Single(OrdersReader.Read(ShippedFiles.PathTo("config/crops.yaml"), null, _ => Orders.Today).Complaints).What);

    [Fact]
    public void AFileThatIsNotThereIsNotJudged() =>
        Assert.False(CropsReader.Read(Path.Combine(Path.GetTempPath(), "no-such-crops.yaml")).CouldBeRead);
}
