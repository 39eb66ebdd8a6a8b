using System.Globalization;
using NodaTime;
using RackController.Model;
using RackController.Plant;
using RackController.RackFile;
using RackController.Testing;
using Xunit.Abstractions;

namespace RackController.Service.Tests.Recording;

/// <summary>A card of a few gigabytes holds years: what a rack with noisy sensors lives through takes less than 5 MB a day.</summary>
public sealed class RoomTests(ITestOutputHelper output)
{
    private const double MostBytesPerDay = 5e6;

    [Theory]
    [InlineData("config/demo-first-rack.yaml")]
    [InlineData("config/demo-four-tier.yaml")]
    [InlineData("config/demo-three-racks.yaml")]
    public void ADayTakesLessThanFiveMegabytes(string file)
    {
        var site = RackFileReader.Read(ShippedFiles.PathTo(file)).Site!;
        using var folder = new TemporaryFolder();
        var path = folder.File("journal.db");
        using var service = new RecordedService(site, path, PlantStart.Default);
        foreach (var sensor in site.Sensors.Where(sensor => !sensor.IsContact))
        {
            service.Inject(new Fault(FaultKind.SensorNoise, MonotonicTime.Zero, MonotonicTime.Never)
            {
                Sensor = sensor.Id,
                Size = NoiseOf(sensor.Kind),
            });
        }

        // The journal is tidied at every end.
        service.Boot();
        service.Run(Duration.FromHours(1));
        service.End();
        var before = new FileInfo(path).Length;
        service.Boot();
        service.Run(Duration.FromHours(24));
        service.End();

        var bytes = new FileInfo(path).Length - before;
        var run = service.Replay()[^1];
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{file}: {bytes / 1e6:0.00} MB a day, {run.Scans} scans on record, {run.Commands} commands, {run.Events} events"));
        Assert.InRange(bytes, 1, MostBytesPerDay);
        Assert.Equal(0, run.DifferenceCount);
    }

    /// <summary>Standard deviations of the order of data sheets of digital temperature and humidity sensors, of pressure transmitters
    /// and of current transformers; common practice, no source.</summary>
    private static double NoiseOf(SensorKind kind) => kind switch
    {
        SensorKind.AirHumidity => 1,
        SensorKind.CircuitCurrent => 0.05,
        SensorKind.PumpCurrent => 0.025,
        SensorKind.ReservoirLevel or SensorKind.TrayLevel => 1,
        _ => 0.1,
    };
}
