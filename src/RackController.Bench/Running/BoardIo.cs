using RackController.Model;

namespace RackController.Bench;

/// <summary>Lets a board whose monotonic clock began at its last boot use a rack that counts from the start of the run.</summary>
/// <param name="rack">The simulated rack.</param>
/// <param name="site">Its site.</param>
/// <param name="clock">The clock of the run.</param>
internal sealed class BoardIo(IRackIo rack, Site site, VirtualClock clock) : IRackIo
{
    public IoOutcome Read(MonotonicTime now, Readings readings)
    {
        var outcome = rack.Read(clock.Bench, readings);
        if (!outcome.IsOk)
        {
            // Nothing new was read: what is there keeps its age.
            return outcome;
        }

        foreach (var sensor in site.Sensors)
        {
            ref var reading = ref readings[sensor.Id];
            reading = reading with { TakenAt = clock.ToBoard(reading.TakenAt) };
        }

        return outcome;
    }

    public IoOutcome Write(MonotonicTime now, RelayCommands commands) => rack.Write(clock.Bench, commands);
}
