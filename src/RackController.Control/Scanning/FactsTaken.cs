using RackController.Model;

namespace RackController.Control;

/// <summary>How the facts of a scan come to be known: whoever validates, switches and admits says so here, nobody who decides.</summary>
internal sealed partial class Facts
{
    /// <summary>Whether another value of a sensor may change what was decided: it lies beyond a limit that somebody compared it
    /// with since <see cref="BeginLook"/>. A level that nobody asked for may move as it likes.</summary>
    public bool Matters(SensorId sensor, double value) => !bands[sensor.Index].Holds(value);

    /// <summary>What hangs on the sensors of an area is decided anew.</summary>
    public void BeginLook(Area area)
    {
        foreach (var sensor in area.Sensors)
        {
            bands[sensor.Id.Index] = Band.Everything;
        }
    }

    /// <summary>From here on, until the next says so, it is whoever stands in this area that asks.</summary>
    public void AskedBy(Area area) => asking = area;

    /// <summary>Begins a scan.</summary>
    public void Begin(in Moment now, in ScanConditions conditions, RelayCommands last)
    {
        Conditions = conditions;
        Before = Now;
        Now = now;
        lastCommands.CopyFrom(last);
    }

    /// <summary>Sets what a validated sensor says.</summary>
    public void Know(SensorId sensor, double value)
    {
        // Zero below zero is the same value and would be told as another.
        values[sensor.Index] = value + 0.0;
        known[sensor.Index] = true;
    }

    /// <summary>Sets when what a validated sensor says was measured.</summary>
    public void Date(SensorId sensor, MonotonicTime time) => takenAt[sensor.Index] = time;

    /// <summary>A load of a circuit is switched by this scan.</summary>
    public void NoteSwitching(Area circuit)
    {
        foreach (var sensor in circuit.Sensors)
        {
            beforeSwitching[sensor.Id.Index] = known[sensor.Id.Index] ? values[sensor.Id.Index] : double.NaN;
        }
    }

    /// <summary>Sets whether a load draws current.</summary>
    public void SetFlow(LoadId load, Flow flow) => flows[load.Index] = flow;

    /// <summary>Forgets what a sensor said.</summary>
    public void Forget(SensorId sensor) => known[sensor.Index] = false;

    /// <summary>Whether doubts were raised or settled that <see cref="TakeDoubt"/> has not yet let count.</summary>
    public bool HaveDoubtsMoved { get; set; }

    /// <summary>From the next scan on a sensor is doubted.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="words">Why, as a phrase that can follow its name; null for one that is to be believed again.</param>
    public void Doubt(SensorId sensor, string? words)
    {
        newDoubts[sensor.Index] = words;
        HaveDoubtsMoved = true;
    }

    /// <summary>Lets a doubt that was raised or settled count.</summary>
    /// <returns>Whether there was one.</returns>
    public bool TakeDoubt(SensorId sensor)
    {
        var moved = doubts[sensor.Index] != newDoubts[sensor.Index];
        doubts[sensor.Index] = newDoubts[sensor.Index];
        return moved;
    }

    /// <summary>Sets whether a circuit cannot carry all that is wanted, for the next scan.</summary>
    public void SetShedding(CircuitId circuit, bool isShedding) => shedding[circuit.Index] = isShedding;
}
