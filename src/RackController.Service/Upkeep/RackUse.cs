using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Growing;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// How much the racks of a site were used, by their journal: floods that began, and how long the pump was told to run. Whole days come
/// from the sums of days, so that years cost little; what is not summed up yet, and the last two weeks, from the events themselves.
/// </summary>
internal sealed class RackUse
{
    /// <summary>For so long after a work was done the day on which it was done counts from that time on; later the whole of it counts,
    /// which makes the work due a day's floods too soon at most.</summary>
    private static readonly Duration exactFor = Duration.FromDays(14);

    // Longer than any pump may run, so that one that runs when the events begin is seen to have been started.
    private static readonly Duration startedWithin = Duration.FromDays(1);

    private readonly Site site;
    private readonly Instant now;
    private readonly Instant eventsFrom;
    private readonly LocalDate? lastSummed;
    private readonly ILookup<string, Instant> floods;
    private readonly ImmutableDictionary<string, List<HistorySpan>> pumpOn;
    private readonly ILookup<string, DaySum> sums;

    private RackUse(JournalHistory journal, Site site, Instant oldest, Instant now)
    {
        this.site = site;
        this.now = now;
        lastSummed = journal.LastDay();
        var exact = Instant.Max(oldest, now - exactFor);
        eventsFrom = lastSummed is { } last ? Instant.Min(exact, BeginOf(last.PlusDays(1))) : oldest;
        var span = new HistorySpan(eventsFrom - startedWithin, now + Duration.Epsilon);
        var events = journal.EventsIn(span, EventKind.Flood, EventKind.Load).Reverse().ToList();
        floods = events.Where(kept => kept.Event.Kind == EventKind.Flood && kept.Event.What == FloodEvent.Filling)
            .ToLookup(kept => kept.Event.Subject, kept => kept.Event.At.Wall);
        pumpOn = PumpTimes(events);
        sums = (lastSummed is { } until ? journal.Days(DayOf(oldest), until) : [])
            .Where(sum => sum.Figure is DayFigure.Floods or DayFigure.HoursOn)
            .ToLookup(sum => sum.Subject);
    }

    /// <summary>Reads what is needed to tell how much racks were used since some times.</summary>
    /// <param name="journal">The journal; nothing of it is kept.</param>
    /// <param name="site">The site.</param>
    /// <param name="oldest">The earliest time that is asked about.</param>
    /// <param name="now">The time.</param>
    /// <exception cref="CouldNotRunException">The journal cannot be read.</exception>
    public static RackUse Read(JournalHistory journal, Site site, Instant oldest, Instant now) => new(journal, site, oldest, now);

    /// <summary>How much a rack was used.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="since">Since when; nothing counts where that is still to come.</param>
    /// <param name="wasDone">Whether a work was done then.</param>
    public UpkeepUse Since(Rack rack, Instant since, bool wasDone)
    {
        var day = DayOf(since);
        if (lastSummed is not { } last || day > last)
        {
            return new UpkeepUse(since, wasDone, FloodsIn(rack, since, now), PumpOnIn(rack, since, now));
        }

        var isExact = since >= eventsFrom;
        var (firstWhole, dayAfter, tail) = (isExact ? day.PlusDays(1) : day, BeginOf(day.PlusDays(1)), BeginOf(last.PlusDays(1)));
        var begun = Sum(rack.Name, DayFigure.Floods, firstWhole) + FloodsIn(rack, tail, now)
            + (isExact ? FloodsIn(rack, since, dayAfter) : 0);
        var ran = Duration.FromHours(Sum(site[rack.Pump.Load].Name, DayFigure.HoursOn, firstWhole)) + PumpOnIn(rack, tail, now)
            + (isExact ? PumpOnIn(rack, since, dayAfter) : Duration.Zero);
        return new UpkeepUse(since, wasDone, (int)Math.Round(begun), ran);
    }

    private double Sum(string subject, DayFigure figure, LocalDate from) =>
        sums[subject].Where(sum => sum.Figure == figure && sum.Day >= from).Sum(sum => sum.Mean);

    private int FloodsIn(Rack rack, Instant from, Instant until) => floods[rack.Name].Count(at => at >= from && at < until);

    private Duration PumpOnIn(Rack rack, Instant from, Instant until) => pumpOn[site[rack.Pump.Load].Name].Aggregate(
        Duration.Zero,
        (sum, on) => sum + Duration.Max(Duration.Zero, Instant.Min(on.Until, until) - Instant.Max(on.From, from)));

    /// <summary>When each pump was told to be on. While the controller did not run a pump was off, which is its safe state.</summary>
    /// <param name="oldestFirst">What happened.</param>
    private ImmutableDictionary<string, List<HistorySpan>> PumpTimes(List<KeptEvent> oldestFirst)
    {
        var times = site.Racks.ToImmutableDictionary(rack => site[rack.Pump.Load].Name, _ => new List<HistorySpan>());
        var since = new Dictionary<string, Instant>();
        KeptEvent? last = null;
        foreach (var kept in oldestFirst)
        {
            var (at, what, subject) = (kept.Event.At.Wall, kept.Event.What, kept.Event.Subject);
            if (last is not null && last.Run != kept.Run)
            {
                EndAll(last.Event.At.Wall);
            }

            if (times.TryGetValue(subject, out var its) && what == "on")
            {
                since.TryAdd(subject, at);
            }
            else if (its is not null && since.Remove(subject, out var from))
            {
                its.Add(new HistorySpan(from, at));
            }

            last = kept;
        }

        EndAll(now);
        return times;

        void EndAll(Instant at)
        {
            foreach (var (pump, from) in since)
            {
                times[pump].Add(new HistorySpan(from, at));
            }

            since.Clear();
        }
    }

    private LocalDate DayOf(Instant at) => at.InZone(site.Zone).Date;

    private Instant BeginOf(LocalDate day) => site.Zone.AtStartOfDay(day).ToInstant();
}
