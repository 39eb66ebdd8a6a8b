using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>
/// What a site does when nothing fails: the real controller on the bench, over the day on which cases strike, the day before and two
/// days after. It says when each phase is, and what each crop is owed.
/// </summary>
internal sealed class FaultFreeDays
{
    // A Monday from which no zone changes its clocks for weeks either way.
    private static readonly LocalDate strikeDay = new(2026, 2, 2);
    private static readonly Duration nearAnEdge = Duration.FromSeconds(2);
    private const int DaysAfter = 3;

    private readonly Site site;
    private readonly List<(Instant At, FloodPhase Flood, bool Lit)>[] changes;

    private FaultFreeDays(Site site)
    {
        this.site = site;
        changes = [.. site.Racks.Select(_ => new List<(Instant, FloodPhase, bool)>())];
        var start = strikeDay.PlusDays(-1).AtStartOfDayInZone(site.Zone).ToInstant();
        From = strikeDay.AtStartOfDayInZone(site.Zone).ToInstant();
        var end = strikeDay.PlusDays(DaysAfter).AtStartOfDayInZone(site.Zone).ToInstant();
        var run = new VirtualRun(site, start, [], PlantStart.Default, profile: null);
        run.Watch(RunLevels.Of(site));
        Duties = new CropDuties(site);
        run.Begin();
        do
        {
            Note(run.Now);
            Duties.Look(run.Now);
        }
        while (run.Step(MonotonicTime.Zero + (end - start)));

        Duties.Close(run.Now);
        Windows = [.. site.Racks.SelectMany(WindowsOf)];
        LongestBetweenFloods = site.Racks.Max(LongestGap);
    }

    /// <summary>The beginning of the day on which cases strike.</summary>
    public Instant From { get; }

    /// <summary>When each rack is in which phase on that day.</summary>
    public ImmutableArray<PhaseWindow> Windows { get; }

    /// <summary>What the crops got.</summary>
    public CropDuties Duties { get; }

    /// <summary>The longest time from one flood to the next on any rack.</summary>
    public Duration LongestBetweenFloods { get; }

    /// <summary>Rehearses them.</summary>
    public static FaultFreeDays Of(Site site) => new(site);

    private void Note(IObserved now)
    {
        foreach (var rack in site.Racks)
        {
            var lit = rack.Tiers.Any(tier => tier.Light is { } light && now.IsTold(light));
            var known = changes[rack.Id.Index];
            var flood = now.Flood(rack.Id);
            if (known.Count == 0 || known[^1].Flood != flood || known[^1].Lit != lit)
            {
                known.Add((now.At, flood, lit));
            }
        }
    }

    private IEnumerable<PhaseWindow> WindowsOf(Rack rack)
    {
        var known = changes[rack.Id.Index];
        var until = From + Duration.FromDays(1);
        for (var index = 1; index < known.Count; index++)
        {
            var (at, flood, lit) = known[index];
            if (at < From || at >= until)
            {
                continue;
            }

            var (_, before, wasLit) = known[index - 1];
            if (EdgeOf(before, flood, wasLit, lit) is { } edge)
            {
                yield return new PhaseWindow(rack.Id, edge, at - nearAnEdge, at + nearAnEdge);
            }

            var ends = index + 1 < known.Count ? known[index + 1].At : until;
            if (PhaseOf(flood, lit) is { } phase && ends - at > 2 * nearAnEdge)
            {
                yield return new PhaseWindow(rack.Id, phase, at + nearAnEdge, ends - nearAnEdge);
            }
        }
    }

    private static CasePhase? EdgeOf(FloodPhase before, FloodPhase flood, bool wasLit, bool lit) => (before, flood) switch
    {
        (not FloodPhase.Filling, FloodPhase.Filling) => CasePhase.FillBegins,
        (FloodPhase.Filling, FloodPhase.Soaking) => CasePhase.SoakBegins,
        (not FloodPhase.Draining, FloodPhase.Draining) => CasePhase.DrainBegins,
        (FloodPhase.Draining, FloodPhase.Idle) => CasePhase.CycleEnds,
        _ => wasLit == lit ? null : lit ? CasePhase.LightsOn : CasePhase.LightsOff,
    };

    private static CasePhase? PhaseOf(FloodPhase flood, bool lit) => flood switch
    {
        FloodPhase.Filling => CasePhase.Filling,
        FloodPhase.Soaking => CasePhase.Soaking,
        FloodPhase.Draining => CasePhase.Draining,
        FloodPhase.Idle => lit ? CasePhase.Idle : CasePhase.Dark,
        _ => null,
    };

    private Duration LongestGap(Rack rack)
    {
        var fills = Duties.FillsBegun(rack.Id);
        return fills.Zip(fills.Skip(1), (one, next) => next - one).DefaultIfEmpty(Duration.FromDays(1)).Max();
    }
}
