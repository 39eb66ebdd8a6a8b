using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Exploring;

/// <summary>How the proof tests of a site stand.</summary>
/// <param name="PassedAt">When all of them were passed last, by the calendar.</param>
/// <param name="HasFailed">Whether all of them failed since.</param>
/// <param name="UnderWay">Whose is under way; null while none is.</param>
/// <param name="JustPassed">Whose was passed at the scan before; null when none was.</param>
internal sealed record TestsTold(Instant PassedAt, bool HasFailed, SensorId? UnderWay, SensorId? JustPassed);

/// <summary>The proof tests of a site, made to stand as a walk wants them.</summary>
internal sealed class WalkedTests
{
    private static readonly Instant longAgo = Instant.FromUtc(1990, 1, 1, 0, 0);
    private readonly ImmutableArray<ProofTestItem> items;
    private readonly ScheduleClock calendar;

    public WalkedTests(Site site, Areas areas, Moment start)
    {
        var memory = new MemoryReader(null, start);
        calendar = new RackDemand(site, new RackId(0), memory, start, []).Clock;
        Log = new ProofTestLog(site, areas, calendar, memory, start, []);
        items = [.. areas.All.SelectMany(area => Log.At(area))];
    }

    public ProofTestLog Log { get; }

    /// <summary>Makes them stand so.</summary>
    public void Tell(TestsTold told, in Moment now)
    {
        calendar.Update(now with { WallTrusted = true }, new Agenda());
        foreach (var item in items)
        {
            item.Pass(Instant.Max(told.PassedAt, longAgo));
            if (told.HasFailed)
            {
                item.Fail();
            }
        }

        Log.UnderWay = told.UnderWay is { } contact ? Log.Of(contact) : null;
        Log.JustPassed = told.JustPassed is { } passed ? Log.Of(passed) : null;
    }
}
