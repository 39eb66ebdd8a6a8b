using System.Runtime.InteropServices;

namespace RackController.Verbs;

/// <summary>Somebody ends a long run by hand (Ctrl-C, Ctrl-\, a signal to terminate, a closed terminal): what was done so far is kept and
/// told.</summary>
internal sealed class Interruption : IDisposable
{
    private static readonly PosixSignal[] endings = [PosixSignal.SIGINT, PosixSignal.SIGQUIT, PosixSignal.SIGTERM, PosixSignal.SIGHUP];

    private readonly CancellationTokenSource source = new();
    private readonly PosixSignalRegistration[] registrations;

    /// <summary>Begins to listen.</summary>
    /// <param name="drivesLoads">Whether loads may be on meanwhile: Ctrl-Z would freeze the program with them on, and ends it
    /// instead.</param>
    public Interruption(bool drivesLoads = false)
    {
        PosixSignal[] signals = drivesLoads && !OperatingSystem.IsWindows() ? [.. endings, PosixSignal.SIGTSTP] : endings;
        registrations = Array.ConvertAll(signals, signal => PosixSignalRegistration.Create(signal, End));
    }

    /// <summary>Cancelled once somebody has.</summary>
    public CancellationToken Token => source.Token;

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var registration in registrations)
        {
            registration.Dispose();
        }

        source.Dispose();
    }

    // The second one ends the program at once, as it would without this; but none ever freezes it.
    private void End(PosixSignalContext context)
    {
        context.Cancel = !source.IsCancellationRequested || !endings.Contains(context.Signal);
        source.Cancel();
    }
}
