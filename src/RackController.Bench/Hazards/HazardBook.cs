using System.Collections.Immutable;
using NodaTime;

namespace RackController.Bench;

/// <summary>Collects the hazards of a run: the first sighting of each kind at each place.</summary>
internal sealed class HazardBook(EventLog log)
{
    private readonly Dictionary<(HazardKind Kind, string Where), Hazard> hazards = [];

    /// <summary>What showed, in the order in which it did.</summary>
    public ImmutableArray<Hazard> Hazards => [.. hazards.Values.OrderBy(hazard => hazard.Elapsed)];

    public void Report(IObserved now, HazardKind kind, string where, Vicinity vicinity, string seen)
    {
        if (!hazards.ContainsKey((kind, where)))
        {
            var causes = log.ChainOf(subject => vicinity.Concerns(now.Site, subject));
            hazards.Add((kind, where), new Hazard(kind, where, now.At, now.Elapsed, seen, causes));
        }
    }
}

/// <summary>Watches every run for one kind of hazard.</summary>
internal interface IHazardWatch
{
    /// <summary>Looks at one moment and reports what it sees.</summary>
    void Look(IObserved now, HazardBook book);
}

/// <summary>How long something has lasted, for each of several places.</summary>
internal sealed class Lasting(int places)
{
    private readonly Duration[] lasted = new Duration[places];

    /// <summary>Counts on while the condition holds, and from nothing when it holds again.</summary>
    /// <returns>How long it has held without a break.</returns>
    public Duration Count(int place, bool holds, Duration sinceBefore) =>
        lasted[place] = holds ? lasted[place] + sinceBefore : Duration.Zero;
}
