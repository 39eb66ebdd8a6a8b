using RackController.Testing;

namespace RackController.Model.Tests;

public class ReadingsTests
{
    private static readonly Site Site = Sites.OneRack();

    [Fact]
    public void BeforeAnythingIsReadEveryReadingIsMissing()
    {
        var readings = new Readings(Site);
        Assert.Equal(Site.Sensors.Length, readings.Count);
        Assert.All(Site.Sensors, sensor => Assert.Equal(ReadingQuality.Missing, readings[sensor.Id].Quality));
    }

    [Fact]
    public void ACopyKeepsWhatItWasGivenWhenTheOriginalGoesOn()
    {
        var sensor = Site.Sensors[0].Id;
        var original = new Readings(Site);
        original[sensor] = new Reading(1, ReadingQuality.Good, MonotonicTime.FromMilliseconds(100));
        var copy = new Readings(Site);
        copy.CopyFrom(original);
        original[sensor] = new Reading(0, ReadingQuality.Corrupt, MonotonicTime.FromMilliseconds(200));

        Assert.Equal(new Reading(1, ReadingQuality.Good, MonotonicTime.FromMilliseconds(100)), copy[sensor]);
    }
}
