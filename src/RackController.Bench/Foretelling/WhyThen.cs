using System.Collections.Immutable;
using NodaTime;
using NodaTime.TimeZones;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What became of a local time that a person asked about.</summary>
public enum LocalTimeFate
{
    /// <summary>It comes once, as it should.</summary>
    Ordinary,

    /// <summary>The clocks skip it; the first moment after the gap stands for it.</summary>
    Skipped,

    /// <summary>It comes twice; the first time stands for it.</summary>
    Twice,
}

/// <summary>What every load would be doing at a moment, and through which steps, if nothing went wrong. The controller's
/// own words, from running it up to that moment.</summary>
/// <param name="Site">The site.</param>
/// <param name="Asked">The local time that was asked about.</param>
/// <param name="At">The moment that stands for it.</param>
/// <param name="Fate">Whether the local time needed explaining.</param>
/// <param name="Loads">Why each load is as it is, by load.</param>
/// <param name="Next">What is due next, soonest first.</param>
public sealed record WhyThen(
    Site Site, LocalDateTime Asked, Instant At, LocalTimeFate Fate, ImmutableArray<LoadWhy> Loads, ImmutableArray<DueNext> Next)
{
    /// <summary>Foretells a moment.</summary>
    /// <param name="site">The site.</param>
    /// <param name="asked">A local time of the site.</param>
    public static WhyThen Foretell(Site site, LocalDateTime asked)
    {
        var mapping = site.Zone.MapLocal(asked);
        var resolver = Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);
        var at = resolver(mapping).ToInstant();
        var control = Rehearsal.UpTo(site, at).Control;
        Invariant.Holds(control is not null, "nothing takes the controller's power away in a rehearsal");
        return new WhyThen(site, asked, at, FateOf(mapping), control.Why(), control.DueNext());
    }

    private static LocalTimeFate FateOf(ZoneLocalMapping mapping) => mapping.Count switch
    {
        0 => LocalTimeFate.Skipped,
        1 => LocalTimeFate.Ordinary,
        _ => LocalTimeFate.Twice,
    };
}
