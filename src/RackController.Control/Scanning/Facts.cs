using RackController.Model;

namespace RackController.Control;

/// <summary>
/// What one scan knows, after validation: every interlock and every demand looks at the same facts. A reading that is stale,
/// implausible or corrupt is not here as a number; it is unknown.
/// </summary>
internal sealed class Facts
{
    private readonly double[] values;
    private readonly bool[] known;
    private readonly RelayCommands lastCommands;

    public Facts(Site site, Moment start)
    {
        Site = site;
        values = new double[site.Sensors.Length];
        known = new bool[site.Sensors.Length];
        lastCommands = new RelayCommands(site);
        Now = start;
        Before = start;
    }

    public Site Site { get; }

    /// <summary>The moment of this scan.</summary>
    public Moment Now { get; private set; }

    /// <summary>The moment of the scan before.</summary>
    public Moment Before { get; private set; }

    /// <summary>Whether the word of a sensor may be believed.</summary>
    public bool IsKnown(SensorId sensor) => known[sensor.Index];

    /// <summary>The value of a sensor whose word may be believed, in its unit.</summary>
    public double Value(SensorId sensor)
    {
        Invariant.Holds(known[sensor.Index], "an unknown reading is never used as a number");
        return values[sensor.Index];
    }

    /// <summary>Whether a contact is known to read 1.</summary>
    public bool IsClosed(SensorId sensor) => known[sensor.Index] && values[sensor.Index] >= 0.5;

    /// <summary>Whether a contact is known to read 0.</summary>
    public bool IsOpen(SensorId sensor) => known[sensor.Index] && values[sensor.Index] < 0.5;

    /// <summary>Whether a load was told to be on by the scan before; nothing was, before the first scan.</summary>
    public bool WasOn(LoadId load) => lastCommands.IsOn(load);

    /// <summary>Begins a scan.</summary>
    public void Begin(in Moment now, RelayCommands last)
    {
        Before = Now;
        Now = now;
        lastCommands.CopyFrom(last);
    }

    /// <summary>Sets what a validated sensor says.</summary>
    public void Know(SensorId sensor, double value)
    {
        values[sensor.Index] = value;
        known[sensor.Index] = true;
    }

    /// <summary>Forgets what a sensor said.</summary>
    public void Forget(SensorId sensor) => known[sensor.Index] = false;
}
