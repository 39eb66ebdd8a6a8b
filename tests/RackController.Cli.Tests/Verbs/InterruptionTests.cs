using System.Diagnostics;
using System.Globalization;
using RackController.Verbs;

namespace RackController.Cli.Tests;

public sealed class InterruptionTests
{
    /// <summary>Frozen, the program would leave on what it has switched on.</summary>
    [Theory]
    [InlineData("TSTP")]
    [InlineData("QUIT")]
    [InlineData("HUP")]
    public async Task WhereLoadsAreDrivenNoKeyOfATerminalFreezesOrKills(string signal)
    {
        using var interruption = new Interruption(drivesLoads: true);
        var ended = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        using var told = interruption.Token.Register(ended.SetResult);

        using var kill = Process.Start("kill", [$"-{signal}", Environment.ProcessId.ToString(CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync();

        await ended.Task.WaitAsync(TimeSpan.FromSeconds(20));
    }
}
