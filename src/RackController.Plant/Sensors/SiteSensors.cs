using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Plant;

/// <summary>Every sensor of a site: what it says, and what its faults let it say.</summary>
internal sealed class SiteSensors
{
    private readonly Site site;
    private readonly SensorTruth truth;
    private readonly SensorChannel[] channels;
    private readonly ImmutableArray<Sensor> contacts;
    private readonly ImmutableArray<Sensor> contactsOfCircuits;
    private readonly ImmutableArray<ImmutableArray<Sensor>> contactsOfRack;
    private readonly List<Sensor> disturbed = [];

    public SiteSensors(Site site, PlantStart start, SensorTruth truth)
    {
        this.site = site;
        this.truth = truth;
        channels = [.. site.Sensors.Select(sensor => new SensorChannel(sensor, start))];
        contacts = [.. site.Sensors.Where(sensor => sensor.IsContact)];
        contactsOfCircuits = [.. contacts.Where(sensor => sensor.Rack is null)];
        contactsOfRack = [.. site.Racks.Select(rack => contacts.Where(sensor => sensor.Rack == rack.Id).ToImmutableArray())];
    }

    /// <summary>When a sensor could next say something else although the truth does not change;
    /// <see cref="MonotonicTime.Never"/> while no fault disturbs one.</summary>
    public MonotonicTime Due
    {
        get
        {
            var due = MonotonicTime.Never;
            foreach (var sensor in disturbed)
            {
                due = MonotonicTime.Earlier(due, channels[sensor.Id.Index].Due);
            }

            return due;
        }
    }

    /// <summary>Names a value whose passing matters.</summary>
    public void Watch(SensorId sensor, double value) => channels[sensor.Index].Watch(value);

    /// <summary>Reads all of them.</summary>
    public void Read(Readings readings, MonotonicTime now)
    {
        for (var i = 0; i < channels.Length; i++)
        {
            var sensor = new SensorId(i);
            readings[sensor] = channels[i].Say(truth.Value(sensor), now);
        }
    }

    /// <summary>A fault begins or ends; most are not of a sensor.</summary>
    public void Turn(Fault fault, bool begins, MonotonicTime now)
    {
        if (fault.Sensor is not { } id || FaultCatalogue.Entry(fault.Kind).Place is not
            (FaultPlace.Sensor or FaultPlace.Contact or FaultPlace.MeasuringSensor))
        {
            return;
        }

        var sensor = site[id];
        if (begins)
        {
            channels[id.Index].Begin(fault, truth.Value(sensor.Id), now);
            disturbed.Add(sensor);
        }
        else
        {
            channels[id.Index].End(fault, truth.Value(sensor.Id), now);
            disturbed.Remove(sensor);
        }
    }

    /// <summary>Lets all contacts follow the truth, at a moment at which it may have changed.</summary>
    public void FollowContacts(MonotonicTime now) => Follow(contacts, now);

    /// <summary>Lets the contacts of circuits follow them.</summary>
    public void FollowSupplies(MonotonicTime now) => Follow(contactsOfCircuits, now);

    /// <summary>Lets the contacts of one rack follow it.</summary>
    public void FollowContacts(RackId rack, MonotonicTime now) => Follow(contactsOfRack[rack.Index], now);

    /// <summary>Lets those follow that are due.</summary>
    /// <returns>Whether a contact changed, or what a disturbed sensor says passed a value that matters.</returns>
    public bool FollowDue(MonotonicTime now)
    {
        var news = false;
        foreach (var sensor in disturbed)
        {
            var channel = channels[sensor.Id.Index];
            news |= channel.Due <= now && channel.Follow(truth.Value(sensor.Id), now);
        }

        return news;
    }

    private void Follow(ImmutableArray<Sensor> sensors, MonotonicTime now)
    {
        foreach (var sensor in sensors)
        {
            channels[sensor.Id.Index].Follow(truth.Value(sensor.Id), now);
        }
    }
}
