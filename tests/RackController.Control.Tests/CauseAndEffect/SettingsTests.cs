using RackController.Control.Tests.ProofTests;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests;

/// <summary>Every row says the limits of the rack file that it keeps; these are the defaults.</summary>
public class SettingsTests
{
    private readonly ILookup<string, string> settings = CauseAndEffectTable.At(Site())
        .SelectMany(at => at.Stands.Select(stand => (at.Row.Id, stand.Settings)).Distinct())
        .ToLookup(at => at.Id, at => at.Settings);

    [Theory]
    [InlineData("air-too-hot", "out above 32 °C, back below 30 °C; out when unknown for 1 min")]
    [InlineData("circuit-over-limit", "12 A for 10 s; looks again after 10 min; 3 times in 24 h latch")]
    [InlineData("circuit-shed", "12 A")]
    [InlineData("fill-slow", "6 min")]
    [InlineData("float-still", "3 times without a move")]
    [InlineData("float-stuck", "12 times without a move")]
    [InlineData("floats-contradict", "for 10 s")]
    [InlineData("flood-held", "30 min")]
    [InlineData("light-missing", "below 1200 lx, 10 % of the light's own, for 5 min")]
    [InlineData("light-unasked", "above 3600 lx, 30 % of the light's own, for 5 min")]
    [InlineData("light-stays-on", "above 32 °C, until below 30 °C; known to stay on, or 3 times in 24 h, it latches")]
    [InlineData("load-check", "every 12 h")]
    [InlineData("low-float", "wet for 1 min; 2 times in one flood latch")]
    [InlineData("no-fill", "seen within 25 s; 2 times in a row latch")]
    [InlineData("not-drained", "above 10 mm")]
    [InlineData("pump-daily-budget", "3 h in 24 h")]
    [InlineData("pump-maximum-run", "15 min; 3 times in 24 h latch")]
    [InlineData("pump-rest", "15 min")]
    [InlineData("scan-fault", "late by 1 s; good for 10 s")]
    [InlineData("service-hold", "at most 30 min; 30 s after somebody let go")]
    [InlineData("service-hold-ending", "2 min before its end")]
    [InlineData("supply-lost", "quiet for 1 min, then 10 s from one load to the next; 3 times in 24 h latch")]
    [InlineData("water-temperature", "12 °C to 26 °C")]
    public void ARowSaysWhatItGoesBy(string row, string words) => Assert.Equal(words, Assert.Single(settings[row]));

    [Fact]
    public void ARowThatHasNoLimitSaysNone() => Assert.Equal("", Assert.Single(settings["high-water"]));

    private static Site Site()
    {
        var site = ProofSite.Whole.WithContactor();
        var air = site.Sensors[0] with
        {
            Id = new SensorId(site.Sensors.Length),
            Name = "north/air",
            Kind = SensorKind.AirTemperature,
            PlausibleMax = 60,
        };
        var water = air with { Id = new SensorId(site.Sensors.Length + 1), Name = "north/water", Kind = SensorKind.WaterTemperature };
        var light = air with
        {
            Id = new SensorId(site.Sensors.Length + 2),
            Name = "north/tier 1 light level",
            Kind = SensorKind.LightLevel,
            TierNumber = 1,
        };
        return site with { Sensors = [.. site.Sensors, air, water, light] };
    }
}
