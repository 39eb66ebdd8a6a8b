using Microsoft.Extensions.Hosting;
using Serilog;

namespace RackController.Service;

/// <summary>What people see of a running rack: the screen of a terminal and a page. A screen that ends or fails ends the run, since
/// whoever started it there has gone; a page that fails does not.</summary>
internal sealed class Faces(ServiceOptions options, RunningRack rack, ControllerAlarms alarms, ILogger log)
{
    private static readonly TimeSpan TryPageAgainAfter = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan PageEndsWithin = TimeSpan.FromSeconds(2);

    /// <summary>Shows both until the end.</summary>
    /// <returns>What the screen failed of; null when it did not.</returns>
    public async Task<string?> ShowAsync(IHostApplicationLifetime lifetime)
    {
        var page = options.Page is { } serve ? KeepPageAsync(serve, lifetime.ApplicationStopping) : Task.CompletedTask;
        var defect = options.Screen is { } screen ? await ShowScreenAsync(screen, lifetime).ConfigureAwait(false) : null;
        await Task.WhenAny(Task.Delay(Timeout.InfiniteTimeSpan, lifetime.ApplicationStopping)).ConfigureAwait(false);
        await Task.WhenAny(page, Task.Delay(PageEndsWithin)).ConfigureAwait(false);
        return defect;
    }

    private async Task<string?> ShowScreenAsync(
        Func<IRunningRack, CancellationToken, Task> screen, IHostApplicationLifetime lifetime)
    {
        try
        {
            await screen(rack, lifetime.ApplicationStopping).ConfigureAwait(false);
            return null;
        }
        catch (OperationCanceledException) when (lifetime.ApplicationStopping.IsCancellationRequested)
        {
            return null;
        }
        catch (Exception e)
        {
            log.Error(e, "the screen failed");
            return $"the screen failed: {e.Message}";
        }
        finally
        {
            lifetime.StopApplication();
        }
    }

    private async Task KeepPageAsync(PageServing serve, CancellationToken end)
    {
        while (!end.IsCancellationRequested)
        {
            try
            {
                await serve(rack, () => alarms.Clear(ControllerTrouble.PageDown), end).ConfigureAwait(false);
            }
            catch (OperationCanceledException) when (end.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e)
            {
                alarms.Raise(ControllerTrouble.PageDown, $"the page is not served: {e.Message.TrimEnd('.')}");
                if (e is not (CouldNotRunException or IOException or UnauthorizedAccessException))
                {
                    log.Error(e, "the page met a defect; it is tried again");
                }
            }

            await Task.WhenAny(Task.Delay(TryPageAgainAfter, end)).ConfigureAwait(false);
        }
    }
}
