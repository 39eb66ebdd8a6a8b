using System.Diagnostics;
using System.Globalization;

namespace RackController.Service.Tests;

/// <summary>A process that writes a journal or a growing book, and is killed in the midst of it: it gets no chance to flush.</summary>
internal static class KilledWriter
{
    /// <summary>Writes until it is killed.</summary>
    /// <param name="path">What it writes.</param>
    /// <param name="afterEvents">After how many it is killed at the earliest.</param>
    /// <returns>How many were acknowledged.</returns>
    public static async Task<int> WriteAsync(string path, int afterEvents)
    {
        using var writer = Process.Start(new ProcessStartInfo("dotnet", [typeof(KilledWriter).Assembly.Location, path])
        {
            RedirectStandardOutput = true,
        })!;
        var last = 0;
        while (last < afterEvents)
        {
            last = int.Parse(await writer.StandardOutput.ReadLineAsync() ?? "0", CultureInfo.InvariantCulture);
            Assert.NotEqual(0, last);
        }

        writer.Kill();
        while (await writer.StandardOutput.ReadLineAsync() is { } line)
        {
            last = int.TryParse(line, CultureInfo.InvariantCulture, out var number) && number == last + 1 ? number : last;
        }

        await writer.WaitForExitAsync();
        return last;
    }
}
