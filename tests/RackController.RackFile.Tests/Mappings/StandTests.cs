using RackController.Model;

namespace RackController.RackFile.Tests.Mappings;

public sealed class StandTests
{
    private const string Before = "    drip-tray: ";

    // A pound is 0.45359237 kg and an inch 25.4 mm, each exact by definition.
    [Fact]
    public void WeightAndFloorAreReadInEitherUnits()
    {
        Assert.Equal(new RackStand(80, 1220, 610, 4), With("{ weight: 80 kg, length: 1220 mm, width: 610 mm }"));
        var customary = With("{ weight: 100 lb, length: 48 in, width: 24 in, wheels: 6 }")!;
        Assert.Equal(45.359237, customary.EmptyKg, 9);
        Assert.Equal(1219.2, customary.LengthMm, 9);
        Assert.Equal(6, customary.Wheels);
    }

    [Fact]
    public void WithoutItNobodySaid() => Assert.Null(Expect.Site(RackFiles.Small).Racks[0].Stand);

    [Theory]
    [InlineData("{ weight: 80 mm, length: 1220 mm, width: 610 mm }", "`weight` is `80 mm`, which is a length: write a mass")]
    [InlineData("{ weight: 80 kg, length: 1220 mm }", "width")]
    [InlineData("{ weight: 80 kg, length: 1220 mm, width: 610 mm, wheels: 2 }", "wheels")]
    public void AMistakeIsNamed(string stand, string complaint) =>
        Expect.Among(RackFiles.SmallWith(Before, $"    stand: {stand}\n{Before}"), complaint);

    private static RackStand? With(string stand) =>
        Expect.Site(RackFiles.SmallWith(Before, $"    stand: {stand}\n{Before}")).Racks[0].Stand;
}
