using System.Text.Json;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>People see the units that the grower chose; programs always the same ones.</summary>
public sealed class UnitsTests : IAsyncLifetime
{
    private readonly string file = Path.Combine(Directory.CreateTempSubdirectory("rackcontroller-page-").FullName, "rack.yaml");

    private ServedRack served = null!;

    public async Task InitializeAsync()
    {
        var metric = await File.ReadAllTextAsync(ShippedFiles.PathTo("config/demo-four-tier.yaml"));
        await File.WriteAllTextAsync(file, metric.Replace("\nzone:", "\nunits: us\nzone:", StringComparison.Ordinal));
        served = await ServedRack.StartAsync(RackFileReader.Read(file).Site!, file, prepare: MadeUpPast.OfDays(9));
        await served.SeeAsync(status => status.Sensors.All(sensor => sensor.Doubt is null));
    }

    public async Task DisposeAsync()
    {
        await served.DisposeAsync();
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
    }

    [Theory]
    [InlineData("/", " in, ", " gal", "°F")]
    [InlineData("/history", ">in</span>", ">°F</span>")]
    [InlineData("/floods", " gal")]
    public async Task APersonSeesInchesGallonsAndFahrenheit(string address, params string[] expected)
    {
        var text = System.Net.WebUtility.HtmlDecode(await served.Client.GetStringAsync(address));

        Assert.All(expected, unit => Assert.Contains(unit, text, StringComparison.Ordinal));
        Assert.DoesNotMatch("[0-9] (mm|L|L/min|°C)\\b|>(mm|L|L/min|°C)</span>", text);
    }

    [Fact]
    public async Task AChartIsDrawnInThemToo()
    {
        using var data = JsonDocument.Parse(await served.Client.GetStringAsync("/history/data"));

        var temperatures = data.RootElement.GetProperty("charts").EnumerateArray()
            .Single(chart => chart.GetProperty("key").GetString() == "temperatures");
        Assert.Equal("°F", temperatures.GetProperty("unit").GetString());
        Assert.All(
            temperatures.GetProperty("series").EnumerateArray().SelectMany(series => series.GetProperty("mean").EnumerateArray()),
            mean => Assert.True(mean.ValueKind == JsonValueKind.Null || mean.GetDouble() > 50));
    }

    [Fact]
    public async Task AProgramReadsWhatTheNamesSay()
    {
        var status = await served.Client.GetStringAsync("/api/status");

        Assert.Contains("\"unit\":\"mm\"", status, StringComparison.Ordinal);
        Assert.DoesNotContain("gal", status, StringComparison.Ordinal);
    }
}
