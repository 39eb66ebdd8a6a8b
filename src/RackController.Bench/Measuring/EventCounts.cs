using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Counts what a report counts of a run's events, so that a long run need not keep every one of them.</summary>
internal sealed class EventCounts(Site site)
{
    private readonly SortedDictionary<string, int> trips = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, int> alarms = new(StringComparer.Ordinal);
    private string digest = "";
    private int forgotten;

    /// <summary>How often each interlock acted that tells a person of it.</summary>
    public ImmutableArray<Tally> Trips => Tallies(trips);

    /// <summary>How often each alarm was raised.</summary>
    public ImmutableArray<Tally> Alarms => Tallies(alarms);

    /// <summary>What is left of those that are no longer kept.</summary>
    public EarlierEvents Earlier => new(forgotten, digest);

    /// <summary>Counts an event.</summary>
    public void Count(LogEntry entry)
    {
        if (entry.Kind == EventKind.Interlock && entry.What is "acts" or "latched" && IsTold(entry))
        {
            trips[entry.Subject] = trips.GetValueOrDefault(entry.Subject) + 1;
        }
        else if (entry.Kind == EventKind.Alarm && entry.What == AlarmState.Unacknowledged.InWords())
        {
            alarms[entry.Subject] = alarms.GetValueOrDefault(entry.Subject) + 1;
        }
    }

    /// <summary>Counts events that will not be kept.</summary>
    public void Forget(IEnumerable<LogEntry> entries)
    {
        var text = new StringBuilder(digest);
        foreach (var entry in entries)
        {
            Count(entry);
            forgotten++;
            text.Append(LogText.Line(site, entry)).Append('\n');
        }

        digest = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    // A row without an alarm acts in the ordinary course of things, such as the pump's rest between floods.
    private static bool IsTold(LogEntry entry) => CauseAndEffectTable.Rows
        .Any(row => row.Alarm is not null && entry.Subject.EndsWith("/" + row.Id, StringComparison.Ordinal));

    private static ImmutableArray<Tally> Tallies(SortedDictionary<string, int> counts) =>
        [.. counts.Select(count => new Tally(count.Key, count.Value))];
}
