namespace RackController.Hardware.Probes;

/// <summary>Reads one sensor. Called from the thread of its bus only, and may take its time.</summary>
internal interface IProbeReader
{
    /// <summary>The value now, in the unit of the sensor's kind.</summary>
    /// <exception cref="IOException">It did not answer, or what it said cannot be true.</exception>
    double Read();
}
