using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Lets a controller read what is on record of a run.</summary>
internal sealed class RecordedSensors
{
    private readonly Site site;
    private readonly SiteMatch match;
    private readonly ReadingsOnRecord record;

    /// <summary>Prepares to read.</summary>
    /// <param name="site">The site that was driven.</param>
    /// <param name="match">Finds its sensors by their numbers on record.</param>
    public RecordedSensors(Site site, SiteMatch match)
    {
        this.site = site;
        this.match = match;
        record = new ReadingsOnRecord(site);
    }

    /// <summary>Takes what is noted at a moment.</summary>
    public void Note(IEnumerable<RecordedReading> noted, MonotonicTime at)
    {
        foreach (var each in noted)
        {
            if (match.Sensor(each.Sensor) is { } sensor)
            {
                record.Take(sensor, each.Reading, at);
            }
        }
    }

    /// <summary>Fills in what the sensors said at a moment.</summary>
    public void Fill(Readings readings, MonotonicTime at)
    {
        foreach (var sensor in site.Sensors)
        {
            readings[sensor.Id] = record.At(sensor.Id, at);
        }
    }
}
