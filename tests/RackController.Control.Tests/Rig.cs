using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests;

/// <summary>A controller with its site, clocks and readings in hand, and everything it said.</summary>
internal sealed class Rig : IEventSink
{
    private readonly List<ControlEvent> events = [];
    private readonly Readings readings;
    private readonly HashSet<SensorId> silent = [];
    private RackControl control;
    private readonly List<OperatorRequest> asked = [];
    private bool somethingChanged;
    private RelayCommands commands;

    public Rig(Site site, Instant? start = null, ControlMemory? memory = null)
    {
        Site = site;
        Now = new Moment(MonotonicTime.FromMilliseconds(5_000), start ?? Instant.FromUtc(2026, 6, 1, 16, 0), WallTrusted: true);
        readings = new Readings(site);
        foreach (var sensor in site.Sensors)
        {
            Set(sensor, 1 - sensor.HarmfulValue ?? (IsCurrent(sensor) ? 0 : (sensor.PlausibleMin + sensor.PlausibleMax) / 2));
        }

        control = new RackControl(site, Now, memory);
        commands = new RelayCommands(site);
    }

    public Site Site { get; }

    public Moment Now { get; private set; }

    public RackControl Control => control;

    public IReadOnlyList<ControlEvent> Events => events;

    /// <summary>What the rack does after each scan, by what it was told.</summary>
    public Action? Rack { get; set; }

    /// <summary>How the next scans go.</summary>
    public ScanConditions Conditions { get; set; } = ScanConditions.Good;

    /// <summary>What the loads were told last.</summary>
    public RelayCommands Commands => commands;

    /// <summary>Whether the contactor of the only circuit is told to cut it.</summary>
    public bool IsCut => commands.IsCut(new CircuitId(0));

    public bool IsOn(string load) => commands.IsOn(Load(load).Id);

    public Load Load(string name) => Site.Loads.Single(load => load.Name == name);

    public Sensor Sensor(string name) => Site.Sensors.Single(sensor => sensor.Name == name);

    public void Take(ControlEvent happened) => events.Add(happened);

    public void Set(string sensor, double value) => Set(Sensor(sensor), value);

    /// <summary>From now on the sensor says nothing new.</summary>
    public void Silence(string sensor)
    {
        silent.Add(Sensor(sensor).Id);
        somethingChanged = true;
    }

    /// <summary>What a sensor said last.</summary>
    public double Value(string sensor) => readings[Sensor(sensor).Id].Value;

    public bool IsSilent(string sensor) => silent.Contains(Sensor(sensor).Id);

    /// <summary>The sensor speaks again.</summary>
    public void Speak(string sensor)
    {
        silent.Remove(Sensor(sensor).Id);
        somethingChanged = true;
    }

    public void StepWall(Duration by)
    {
        Now = Now with { Wall = Now.Wall + by };
        somethingChanged = true;
    }

    public void TrustWall(bool trusted)
    {
        Now = Now with { WallTrusted = trusted };
        somethingChanged = true;
    }

    /// <summary>One scan 100 ms after the one before.</summary>
    public RelayCommands Scan(params OperatorRequest[] requests)
    {
        Advance(Duration.FromMilliseconds(100));
        return ScanNow(requests);
    }

    /// <summary>Scans every 100 ms for a while.</summary>
    public void ScanFor(Duration length)
    {
        for (var end = Now.Monotonic + length; Now.Monotonic < end;)
        {
            Scan();
        }
    }

    /// <summary>Leaps from change to change for a while; what the test itself changed is looked at by the next scan, on the
    /// 100 ms grid of <see cref="ScanFor"/>.</summary>
    public void LeapFor(Duration length)
    {
        for (var end = Now.Monotonic + length; Now.Monotonic < end;)
        {
            LeapTo(MonotonicTime.Earlier(control.NextChange, end));
        }
    }

    /// <summary>Leaps from change to change until something holds, at most for two days.</summary>
    public void LeapUntil(Func<bool> holds)
    {
        for (var end = Now.Monotonic + Duration.FromDays(2); !holds();)
        {
            Assert.True(Now.Monotonic < end, "it never came to hold");
            LeapTo(MonotonicTime.Earlier(control.NextChange, end));
        }
    }

    /// <summary>The power goes and comes back: a new controller with what the old one remembered, to which a silent sensor has
    /// said nothing yet.</summary>
    public void Restart(Duration away, bool wallTrusted = true)
    {
        var memory = control.Save();
        Now = new Moment(MonotonicTime.FromMilliseconds(5_000), Now.Wall + away, wallTrusted);
        control = new RackControl(Site, Now, memory);
        commands = new RelayCommands(Site);
        foreach (var sensor in silent)
        {
            readings[sensor] = new Reading(0, ReadingQuality.Missing, Now.Monotonic);
        }

        Refresh();
    }

    /// <summary>Asks for something; the next scan takes it.</summary>
    public void Ask(OperatorRequest request)
    {
        asked.Add(request);
        somethingChanged = true;
    }

    /// <summary>Copies the readings as the sensors would give them at a time.</summary>
    public void Fill(Readings other, MonotonicTime time)
    {
        foreach (var sensor in Site.Sensors)
        {
            other[sensor.Id] = silent.Contains(sensor.Id) ? readings[sensor.Id] : readings[sensor.Id] with { TakenAt = time };
        }
    }

    public Alarm? Alarm(string key) => control.Alarms().SingleOrDefault(alarm => alarm.Key == key);

    public LoadWhy Why(string load) => control.Why()[Load(load).Id.Index];

    private static bool IsCurrent(Sensor sensor) => sensor.Kind is SensorKind.PumpCurrent or SensorKind.CircuitCurrent;

    private void Set(Sensor sensor, double value)
    {
        // One that says nothing new says nothing of this either.
        var takenAt = silent.Contains(sensor.Id) ? readings[sensor.Id].TakenAt : Now.Monotonic;
        readings[sensor.Id] = new Reading(value, ReadingQuality.Good, takenAt);
        somethingChanged = true;
    }

    private void LeapTo(MonotonicTime time)
    {
        var grid = Duration.FromMilliseconds(100).ToInt64Nanoseconds();
        var steps = somethingChanged ? 1 : Math.Max(1, ((time - Now.Monotonic).ToInt64Nanoseconds() + grid - 1) / grid);
        Advance(Duration.FromNanoseconds(steps * grid));
        ScanNow();
    }

    private void Advance(Duration by)
    {
        Now = Now with { Monotonic = Now.Monotonic + by, Wall = Now.Wall + by };
        Refresh();
    }

    private void Refresh()
    {
        foreach (var sensor in Site.Sensors.Where(sensor => !silent.Contains(sensor.Id)))
        {
            readings[sensor.Id] = readings[sensor.Id] with { TakenAt = Now.Monotonic };
        }
    }

    private RelayCommands ScanNow(params OperatorRequest[] requests)
    {
        somethingChanged = false;
        OperatorRequest[] all = [.. asked, .. requests];
        asked.Clear();
        commands = control.Scan(Now, readings, Conditions, all, this);
        Rack?.Invoke();
        return commands;
    }
}
