using NodaTime;
using RackController.Model;

namespace RackController.RackFile.Tests.Binding;

public sealed class QuantityTests
{
    /// <summary>1 in is 25.4 mm and 1 ft 304.8 mm exactly (international yard and pound agreement of 1959).</summary>
    [Theory]
    [InlineData("60 mm", 60)]
    [InlineData("60mm", 60)]
    [InlineData("\"60 mm\"", 60)]
    [InlineData("6 cm", 60)]
    [InlineData("0.06 m", 60)]
    [InlineData("2.5 in", 63.5)]
    [InlineData("2 1/2 in", 63.5)]
    [InlineData("5/2 in", 63.5)]
    [InlineData("0.25 ft", 76.2)]
    public void ALengthIsReadInEveryUnit(string written, double expectedMm)
    {
        var site = Expect.Site(RackFiles.SmallWith("low-float: 60 mm", $"low-float: {written}"));

        Assert.Equal(expectedMm, site.Sensors.Single(sensor => sensor.Kind == SensorKind.ReservoirLowFloat).HeightMm, 1e-9);
    }

    /// <summary>1 US gal is 3.785411784 L exactly (231 cubic inches).</summary>
    [Theory]
    [InlineData("40 gal", 151.41647136)]
    [InlineData("150 L", 150)]
    public void AVolumeIsReadInEveryUnit(string written, double expectedL)
    {
        var site = Expect.Site(RackFiles.SmallWith("volume: 160 L", $"volume: {written}"));

        Assert.Equal(expectedL, site.Racks[0].Reservoir.CapacityL, 1e-9);
    }

    /// <summary>0 °C is 32 °F and 100 °C is 212 °F by definition of the scales, so 86 °F is 30 °C.</summary>
    [Theory]
    [InlineData("30 °C")]
    [InlineData("30 C")]
    [InlineData("86 °F")]
    [InlineData("86 F")]
    public void ATemperatureIsReadInBothScales(string written)
    {
        var site = Expect.Site(RackFiles.SmallWith("tiers:\n", $"limits: {{ air-hot: {written} }}\n    tiers:\n"));

        Assert.Equal(30, site.Racks[0].Limits.AirHotC, 1e-9);
    }

    /// <summary>A difference of 9 °F is one of 5 K.</summary>
    [Theory]
    [InlineData("5 °C")]
    [InlineData("5 K")]
    [InlineData("9 °F")]
    public void ATemperatureDifferenceHasNoOffset(string written)
    {
        var site = Expect.Site(RackFiles.SmallWith("tiers:\n", $"limits: {{ air-hot-return: {written} }}\n    tiers:\n"));

        Assert.Equal(5, site.Racks[0].Limits.AirHotReturnK, 1e-9);
    }

    [Theory]
    [InlineData("300 s", 300)]
    [InlineData("5 min", 300)]
    [InlineData("4 min 60 s", 300)]
    [InlineData("0.1 h", 360)]
    [InlineData("5min 30s", 330)]
    public void ADurationIsReadInEveryUnit(string written, double expectedS)
    {
        var site = Expect.Site(RackFiles.SmallWith("fill: 5 min", $"fill: {written}"));

        Assert.Equal(Duration.FromSeconds(expectedS), site.Racks[0].Schedule.Floods.Fill.Limit);
    }

    [Theory]
    [InlineData("depth: 400 mm", "depth: 45 kg",
        "`depth` is `45 kg`, which is a mass: write a length (mm, cm, m, in, ft), such as `45 mm`")]
    [InlineData("depth: 400 mm", "depth: 45 L", "`depth` is `45 L`, which is a volume: write a length")]
    [InlineData("depth: 400 mm", "depth: 400",
        "`depth` is `400`, without a unit: write the unit: mm, cm, m, in, ft, such as `45 mm`")]
    [InlineData("depth: 400 mm", "depth: 0x190 mm", "`depth` is `0x190 mm`, with the unknown unit `x190 mm`")]
    [InlineData("depth: 400 mm", "depth: 400 furlongs", "with the unknown unit `furlongs`")]
    [InlineData("depth: 400 mm", "depth: deep", "`depth` is `deep`, not a number with a unit")]
    [InlineData("depth: 400 mm", "depth: \"400,5 mm\"", "write decimals with a point")]
    [InlineData("depth: 400 mm", "depth: -400 mm", "`depth` is `-400 mm`, outside 0 mm to 10 m")]
    [InlineData("depth: 400 mm", "depth: 400 m", "`depth` is `400 m`, outside 0 mm to 10 m")]
    [InlineData("depth: 400 mm", "depth: .nan", "not a number with a unit")]
    [InlineData("fill: 5 min", "fill: 5", "`for` is `5`, without a unit: write the unit: h, min, s, ms, d")]
    [InlineData("fill: 5 min", "fill: 5 m", "`for` is `5 m`, which is a length: write a duration")]
    [InlineData("fill: 5 min", "fill: 30 s 5 min", "with its units out of order")]
    [InlineData("fill: 5 min", "fill: 99999999 d", "`for` is `99999999 d`")]
    [InlineData("voltage: 120 V", "voltage: 120 W",
        "`voltage` is `120 W`, which is a power: write a voltage (V), such as `230 V`")]
    [InlineData("voltage: 120 V", "voltage: 12 V", "`voltage` is `12 V`, outside 100 V to 250 V")]
    [InlineData("ppfd: 180 umol/m2/s }\n        valve: { power: 6 W }\n        sensors",
        "ppfd: 180 lux }\n        valve: { power: 6 W }\n        sensors", "unknown unit `lux`: write a photon flux density")]
    public void AWrongQuantitySaysWhatIsWrongAndWhatToWrite(string old, string replacement, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(old, replacement), expected);

    [Theory]
    [InlineData("06:00", 6, 0)]
    [InlineData("6:00", 6, 0)]
    [InlineData("\"06:00\"", 6, 0)]
    [InlineData("08:09", 8, 9)]
    [InlineData("00:00", 0, 0)]
    [InlineData("23:59", 23, 59)]
    public void ATimeOfDayIsNeverTakenForANumber(string written, int hour, int minute)
    {
        var site = Expect.Site(RackFiles.SmallWith("on: 06:00", $"on: {written}"));

        Assert.Equal(new LocalTime(hour, minute), site.Racks[0].Schedule.Lights[0]!.Start);
    }

    [Theory]
    [InlineData("24:00", "write midnight as `00:00`")]
    [InlineData("06:60", "not a time of any day")]
    [InlineData("6 am", "not a time of day")]
    [InlineData("360", "not a time of day")]
    [InlineData("06:00:00", "not a time of day")]
    public void AnImpossibleTimeOfDayIsRefused(string written, string expected) =>
        Expect.Complaint(RackFiles.SmallWith("on: 06:00", $"on: {written}"), expected);
}
