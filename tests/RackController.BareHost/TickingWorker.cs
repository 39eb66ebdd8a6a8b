using Microsoft.Extensions.Hosting;

namespace RackController.BareHost;

/// <summary>Does nothing ten times a second, as often as a rack is scanned.</summary>
internal sealed class TickingWorker : BackgroundService
{
    private static readonly TimeSpan period = TimeSpan.FromMilliseconds(100);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        Console.WriteLine("started");
        using var timer = new PeriodicTimer(period);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
        }
    }
}
