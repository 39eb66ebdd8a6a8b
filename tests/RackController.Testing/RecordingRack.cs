using RackController.Model;

namespace RackController.Testing;

/// <summary>A rack whose contacts all read well, and that remembers what it was told. A test may let it fail.</summary>
public sealed class RecordingRack(Site site) : IRackIo
{
    private readonly List<SwitchState[]> writes = [];

    /// <summary>What every read answers.</summary>
    public IoOutcome ReadOutcome { get; set; }

    /// <summary>What every write answers.</summary>
    public IoOutcome WriteOutcome { get; set; }

    /// <summary>What a read throws, as a defect of the program would; null for nothing.</summary>
    public Exception? ReadThrows { get; set; }

    /// <summary>Whether writes are remembered; remembering allocates.</summary>
    public bool Remembers { get; set; } = true;

    /// <summary>Called by every write.</summary>
    public Action? Writing { get; set; }

    /// <summary>How many writes there were.</summary>
    public int WriteCount => writes.Count;

    /// <summary>Whether a load was on in the last write.</summary>
    /// <param name="load">The load.</param>
    public bool IsOn(LoadId load) => WasOn(writes.Count - 1, load);

    /// <summary>Whether a load was on in a write.</summary>
    /// <param name="write">Which write, from 0.</param>
    /// <param name="load">The load.</param>
    public bool WasOn(int write, LoadId load) => writes[write][load.Index] == SwitchState.On;

    /// <summary>Whether the last write put every load in its safe state.</summary>
    public bool IsSafe => site.Loads.All(load => writes[^1][load.Id.Index] == load.SafeState);

    /// <inheritdoc/>
    public IoOutcome Read(MonotonicTime now, Readings readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (ReadThrows is { } defect)
        {
            throw defect;
        }

        foreach (var sensor in site.Sensors)
        {
            var isWell = sensor.Kind is SensorKind.ReservoirLowFloat or SensorKind.SupplySense ? 1 : 0;
            readings[sensor.Id] = new Reading(isWell, ReadingQuality.Good, now);
        }

        return ReadOutcome;
    }

    /// <summary>What is seen of the last write beyond what each write says; null for nothing.</summary>
    public string? SettleFault { get; set; }

    /// <inheritdoc/>
    public IoOutcome WriteLast(MonotonicTime now, RelayCommands commands) =>
        Write(now, commands) is { Fault: { } fault } ? new IoOutcome(fault) : new IoOutcome(SettleFault);

    /// <inheritdoc/>
    public IoOutcome Write(MonotonicTime now, RelayCommands commands)
    {
        ArgumentNullException.ThrowIfNull(commands);
        Writing?.Invoke();
        if (Remembers)
        {
            Remember(commands);
        }

        return WriteOutcome;
    }

    private void Remember(RelayCommands commands) => writes.Add([.. site.Loads.Select(load => commands[load.Id])]);
}
