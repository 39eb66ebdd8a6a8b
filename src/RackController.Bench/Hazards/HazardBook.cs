using System.Collections.Immutable;

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
