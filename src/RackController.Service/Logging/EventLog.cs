using System.Collections.Concurrent;
using RackController.Control;
using Serilog;
using Serilog.Events;

namespace RackController.Service;

/// <summary>
/// Puts every event into the operational log. The scan thread only hands over; a slow console holds up nobody but
/// the housekeeper, who works the events off.
/// </summary>
internal sealed class EventLog(ILogger log) : IScanListener, IDisposable
{
    /// <summary>Beyond this the console or disk of the log stands still; the journal has the events all the same.</summary>
    private const int MostWaiting = 10_000;

    private readonly ConcurrentQueue<ControlEvent> waiting = new();
    private readonly AutoResetEvent arrived = new(false);

    /// <summary>Set when something waits to be written.</summary>
    public WaitHandle Arrived => arrived;

    /// <inheritdoc/>
    public void Happened(ControlEvent[] events, ControlMemory? memory)
    {
        foreach (var happened in events)
        {
            if (waiting.Count < MostWaiting)
            {
                waiting.Enqueue(happened);
            }
        }
    }

    /// <inheritdoc/>
    public void GoOn()
    {
        if (!waiting.IsEmpty)
        {
            arrived.Set();
        }
    }

    public void Dispose() => arrived.Dispose();

    /// <summary>Writes what waits.</summary>
    /// <param name="tally">Counts what was written, for the hourly summary.</param>
    public void WriteWaiting(HourlyTally tally)
    {
        while (waiting.TryDequeue(out var happened))
        {
            tally.Count(happened);
            Write(happened);
        }
    }

    /// <summary>Writes an event with the time at which it happened, not that at which it is written.</summary>
    private void Write(ControlEvent happened)
    {
        if (log.BindMessageTemplate(
            "{Kind:l} {Subject:l}: {What:l}, because {Because:l}",
            [happened.Kind.ToString(), happened.Subject, happened.What, happened.Because], out var template, out var properties))
        {
            var at = happened.At.Wall.ToDateTimeOffset().ToLocalTime();
            log.Write(new LogEvent(at, LevelOf(happened), null, template, properties));
        }
    }

    /// <summary>A warning is what somebody should look at; that it is over, or was seen, is information.</summary>
    private static LogEventLevel LevelOf(ControlEvent happened) => happened switch
    {
        { What: "known" or "trusted" or "returned" or "normal" or "acknowledged" } => LogEventLevel.Information,
        { Kind: EventKind.Alarm or EventKind.Interlock or EventKind.Reading or EventKind.Clock } => LogEventLevel.Warning,
        _ => LogEventLevel.Information,
    };
}
