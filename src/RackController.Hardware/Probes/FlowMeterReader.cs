namespace RackController.Hardware.Probes;

/// <summary>Flow by a meter that gives pulses. The kernel numbers and dates them, so that it matters neither when they are looked at nor
/// that it keeps only the last of many.</summary>
/// <param name="line">Its line.</param>
/// <param name="pulsesPerL">Pulses for a litre.</param>
internal sealed class FlowMeterReader(BusPartOnDemand<IPulseLine> line, double pulsesPerL) : IProbeReader
{
    /// <summary>Slower than one pulse in so many seconds is no flow: a meter's bearing does not turn so slowly.</summary>
    private const double SlowestS = 2;

    private const double NanosecondsPerS = 1e9;
    private const double SPerMinute = 60;

    private readonly Pulse[] pulses = new Pulse[PulseLine.Kept];
    private Pulse? last;

    /// <inheritdoc/>
    public double Read() => line.Ask(Lpm);

    private double Lpm(IPulseLine taken)
    {
        var count = taken.Take(pulses);
        if (count == 0)
        {
            return 0;
        }

        // One alone is measured from the one before, if that was not long ago; several by themselves, since the flow may only just have
        // begun.
        var first = count > 1 ? pulses[0] : last ?? pulses[0];
        var newest = pulses[count - 1];
        last = newest;
        var elapsedS = (newest.Nanoseconds - first.Nanoseconds) / NanosecondsPerS;
        var number = unchecked(newest.Number - first.Number);
        return number == 0 || elapsedS > SlowestS * number || elapsedS <= 0 ? 0 : number / elapsedS / pulsesPerL * SPerMinute;
    }
}
