using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Everything that happened in a run, in order. Takes the controller's events and the scenario's own.</summary>
public sealed class EventLog : IEventSink
{
    private const int LongestChain = 8;
    private const int LongestScene = 5;

    /// <summary>About as many as a rack of five tiers with eight floods a day has in a year.</summary>
    internal const int MostEntries = 40_000;

    private readonly List<LogEntry> entries = [];
    private readonly List<ControlEvent> fresh = [];
    private Duration elapsed;
    private Instant trueTime;

    /// <summary>What happened, in order; of a run of years only the newest of it.</summary>
    public IReadOnlyList<LogEntry> Entries => entries;

    /// <summary>Told of the oldest entries, in order, before they are no longer kept.</summary>
    internal Action<IEnumerable<LogEntry>>? Forgets { get; set; }

    /// <summary>The controller's events since <see cref="Begin"/>.</summary>
    public ReadOnlySpan<ControlEvent> Fresh => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(fresh);

    /// <summary>Begins a moment of the run.</summary>
    /// <param name="sinceStart">Time since the run began.</param>
    /// <param name="at">The true time.</param>
    public void Begin(Duration sinceStart, Instant at)
    {
        elapsed = sinceStart;
        trueTime = at;
        fresh.Clear();
    }

    /// <inheritdoc/>
    public void Take(ControlEvent happened)
    {
        ArgumentNullException.ThrowIfNull(happened);
        fresh.Add(happened);
        Add(new LogEntry(
            elapsed, trueTime, happened.At.Wall, happened.Kind, happened.Subject, happened.What, happened.Because));
    }

    /// <summary>Takes an event of the scenario itself.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="what">What it does.</param>
    public void TakeScenario(string name, string what) =>
        Add(new LogEntry(elapsed, trueTime, null, null, name, what, "the scenario says so"));

    /// <summary>The last few events that could explain why statements are as they are, earliest first; always with the
    /// scenario's own.</summary>
    /// <param name="site">The site that gives the names.</param>
    /// <param name="statements">The statements.</param>
    public ImmutableArray<LogEntry> CausesFor(Site site, params ImmutableArray<Statement> statements) =>
        ChainOf(subject => statements.Any(statement => statement.Concerns(site, subject)));

    internal ImmutableArray<LogEntry> ChainOf(Func<string, bool> concerns)
    {
        var chain = new List<LogEntry>();
        var scene = new List<LogEntry>();
        for (var i = entries.Count - 1; i >= 0 && (chain.Count < LongestChain || scene.Count < LongestScene); i--)
        {
            if (entries[i].Kind is null && scene.Count < LongestScene)
            {
                scene.Add(entries[i]);
            }
            else if (entries[i].Kind is not null && chain.Count < LongestChain && IsTelling(entries[i]) && concerns(entries[i].Subject))
            {
                chain.Add(entries[i]);
            }
        }

        // In order of time; at one moment the scenario comes before what the controller made of it.
        return [.. scene.Concat(chain).Reverse().OrderBy(entry => entry.Elapsed).ThenBy(entry => entry.Kind is null ? 0 : 1)];
    }

    private void Add(LogEntry entry)
    {
        if (entries.Count == MostEntries)
        {
            Forgets?.Invoke(entries.Take(MostEntries / 4));
            entries.RemoveRange(0, MostEntries / 4);
        }

        entries.Add(entry);
    }

    // A sensor that is well again explains nothing that went wrong.
    private static bool IsTelling(LogEntry entry) => entry is not { Kind: EventKind.Reading, What: "known" };
}
