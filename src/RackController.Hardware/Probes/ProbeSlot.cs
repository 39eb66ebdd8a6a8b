using RackController.Model;

namespace RackController.Hardware.Probes;

/// <summary>The last reading of one sensor, handed from the thread of its bus to the scan. Neither waits for longer than it takes to copy
/// three numbers.</summary>
/// <param name="sensor">The sensor.</param>
internal sealed class ProbeSlot(SensorId sensor)
{
    private readonly Lock changing = new();
    private Reading latest;

    /// <summary>Leaves a reading.</summary>
    public void Put(in Reading reading)
    {
        lock (changing)
        {
            latest = reading;
        }
    }

    /// <summary>Gives the scan the last reading, however old it is: its age is the scan's to judge.</summary>
    public void CopyTo(Readings readings)
    {
        lock (changing)
        {
            readings[sensor] = latest;
        }
    }
}
