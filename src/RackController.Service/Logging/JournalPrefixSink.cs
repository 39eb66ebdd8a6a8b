using Serilog.Core;
using Serilog.Events;

namespace RackController.Service;

/// <summary>Writes log lines with the level in front as <c>sd-daemon(3)</c> defines it, so that the journal of systemd can
/// filter by it.</summary>
internal sealed class JournalPrefixSink(TextWriter output) : ILogEventSink
{
    void ILogEventSink.Emit(LogEvent logEvent)
    {
        var text = logEvent.RenderMessage();
        var whole = logEvent.Exception is { } exception ? $"{text}\n{exception}" : text;
        foreach (var line in whole.Split('\n'))
        {
            output.WriteLine($"<{Level(logEvent.Level)}>{line}");
        }
    }

    private static int Level(LogEventLevel level) => level switch
    {
        LogEventLevel.Fatal => 2,
        LogEventLevel.Error => 3,
        LogEventLevel.Warning => 4,
        LogEventLevel.Information => 6,
        _ => 7,
    };
}
