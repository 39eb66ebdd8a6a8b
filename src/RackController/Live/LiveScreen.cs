using RackController.Service;

namespace RackController.Live;

/// <summary>The live page in the terminal: looks four times a second, and at once after a key.</summary>
/// <param name="rack">What to show and to ask.</param>
/// <param name="speed">How many times faster than real time it runs.</param>
internal sealed class LiveScreen(IRunningRack rack, double speed)
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(250);

    /// <summary>Shows the page until it is told to end.</summary>
    /// <param name="end">Ends it.</param>
    public async Task ShowAsync(CancellationToken end)
    {
        var page = new StatusPage(rack.Site, speed);
        var person = new Operator(rack);
        var keys = KeyReader.Start();
        using var terminal = new Terminal();
        while (!end.IsCancellationRequested)
        {
            var status = await rack.LookAsync(end).ConfigureAwait(false);
            while (keys.TryRead(out var key))
            {
                person.Take(key, status);
            }

            var (width, height) = Terminal.Size;
            var legend = Console.IsInputRedirected ? new StyledLine() : person.Legend(status, width);
            var lines = person.ProofTests.IsOpen
                ? ProofTestPage.Lines(rack.Site, status, person.ProofTests.Chosen, legend, width, height)
                : page.Lines(status, person.Chosen, legend, width, height);
            terminal.Show(lines, width, height);
            await Task.WhenAny(Task.Delay(LookEvery, end), keys.WaitToReadAsync(end).AsTask()).ConfigureAwait(false);
        }
    }
}
