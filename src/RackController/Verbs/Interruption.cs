using System.Runtime.InteropServices;

namespace RackController.Verbs;

/// <summary>Somebody ends a long run by hand (Ctrl-C, a signal to terminate, a closed terminal): what was done so far is kept and
/// told.</summary>
internal sealed class Interruption : IDisposable
{
    private readonly CancellationTokenSource source = new();
    private readonly PosixSignalRegistration interrupt;
    private readonly PosixSignalRegistration terminate;
    private readonly PosixSignalRegistration hangUp;

    public Interruption()
    {
        interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, End);
        terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, End);
        hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, End);
    }

    /// <summary>Cancelled once somebody has.</summary>
    public CancellationToken Token => source.Token;

    /// <inheritdoc/>
    public void Dispose()
    {
        interrupt.Dispose();
        terminate.Dispose();
        hangUp.Dispose();
        source.Dispose();
    }

    // The second one ends the program at once, as it would without this.
    private void End(PosixSignalContext context)
    {
        context.Cancel = !source.IsCancellationRequested;
        source.Cancel();
    }
}
