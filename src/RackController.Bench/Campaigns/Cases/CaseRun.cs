using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Runs one case: nothing but the controller, the simulated rack, the hazard watches, a person who comes afterwards, and
/// what is owed to the crops. It ends after a day, once the site floods again and nothing is left to be done, or when that is
/// overdue.</summary>
internal sealed class CaseRun
{
    // Until a person has come, a pump has rested, and a flood has filled, soaked and drained.
    private static readonly Duration personAndRests = Duration.FromHours(2);

    // Budgets and latches look back 24 h: what comes of them later in the day belongs to the case.
    private static readonly Duration aDay = Duration.FromDays(1);
    private readonly Site site;
    private readonly FaultFreeDays days;
    private readonly CampaignCase drawn;
    private readonly Attendant attendant;
    private readonly VirtualRun run;
    private readonly HazardBook hazards;
    private readonly IHazardWatch[] watches;
    private readonly CropDuties duties;
    private readonly Recovery recovery;
    // Breakers that the case itself opens.
    private readonly bool[] isTripped;
    private readonly SortedSet<WiredBackstop> acted = [];
    private Duration? alarmAt;
    private Duration? tripAt;
    private bool isWellAgain;

    // What was missing at the deadline, and at which.
    private (Duration At, string Words) missed = (Duration.MinValue, "");

    // A board without power tells nobody anything, and its dead page tells that.
    private bool wasAway;

    private CaseRun(Site site, FaultFreeDays days, CampaignCase drawn)
    {
        this.site = site;
        this.days = days;
        this.drawn = drawn;
        attendant = new Attendant(site, drawn.AllOver);
        run = new VirtualRun(site, drawn.Start, drawn.Events, PlantStart.Default with { Breakers = drawn.Breakers }, profile: null)
        {
            Visitor = attendant,
        };
        run.Watch(RunLevels.Of(site));
        hazards = new HazardBook(run.Log);
        watches = HazardWatches.Of(site);
        duties = new CropDuties(site);
        recovery = new Recovery(site, duties, (rack, tier) => days.Duties.Wetted(rack.Id, tier.Number - 1).Count > 0);
        isTripped = [.. site.Circuits.Select(circuit => drawn.Faults.Any(fault =>
            fault.Instance.Target.Circuit == circuit.Id
            && fault.Instance.Mode.Kinds.Any(kind => kind is FaultKind.BreakerTrip or FaultKind.GroundFaultTrip)))];
    }

    /// <summary>Runs it.</summary>
    public static CaseOutcome Run(Site site, FaultFreeDays days, CampaignCase drawn)
    {
        var made = new CaseRun(site, days, drawn);
        try
        {
            var outcome = made.ToTheEnd();
            return outcome.Hazards.IsEmpty ? outcome with { Prevented = Prevented(outcome, site, days) } : outcome;
        }
        catch (Exception defect) when (defect is not OutOfMemoryException)
        {
            return made.Outcome(FailureClass.Crash, $"{defect.GetType().Name}: {defect.Message}");
        }
    }

    private static ImmutableArray<Prevention> Prevented(CaseOutcome outcome, Site site, FaultFreeDays days) =>
    [
        .. from part in Prevention.Removable
           where outcome.Acted.Contains(part)
           let left = outcome.Case.Faults.RemoveAll(fault => Prevention.IsOf(part, fault.Instance.Mode))
           where !left.IsEmpty
           let run = new CaseRun(Prevention.Without(part, site), days, outcome.Case with { Faults = left })
           from otherwise in run.ToTheEnd().Hazards.Take(1)
           select new Prevention(part, otherwise),
    ];

    // When it has to have flooded again: what shows at the first flood only is put right after that.
    private Duration Deadline => Duration.Max(drawn.AllOver, attendant.LastDeedAt) + personAndRests + AFlood;

    private Duration LastDeadline => drawn.AllOver + personAndRests + AFlood + days.LongestBetweenFloods;

    // Whose next flood the wrong clock has had already waits for the one after.
    private Duration AFlood => days.LongestBetweenFloods * (1 + ClockFaults);

    // Whatever leaves the clock wrong ends with it set right, also a boot without a clock.
    private int ClockFaults => drawn.Events.Count(happening => happening is ClockSetRight);

    private Shortfall? Lost => Shortfall.Of(
        site, days.Duties, duties, drawn.Start, run.Now.At,
        floodsMoved: ClockFaults);

    private CaseOutcome ToTheEnd()
    {
        var end = MonotonicTime.Zero + Duration.Max(aDay, LastDeadline);
        run.Begin();
        Look();
        while ((run.Now.Elapsed < aDay || !isWellAgain) && run.Step(end))
        {
            Look();
        }

        duties.Close(run.Now);
        if (!hazards.Hazards.IsEmpty)
        {
            return Outcome(FailureClass.Hazard, hazards.Hazards[0].Seen);
        }

        if (!isWellAgain)
        {
            return Outcome(FailureClass.Stuck, $"{Spans.Words(DueAgain - drawn.AllOver)} after the repair: {Missed}");
        }

        return alarmAt is null && !wasAway && Lost is { } lost
            ? Outcome(FailureClass.Silent, lost.Words) with { WentShort = lost.Subject }
            : Outcome(FailureClass.None, "");
    }

    private void Look()
    {
        var now = run.Now;
        foreach (var watch in watches)
        {
            watch.Look(now, hazards);
        }

        duties.Look(now);
        LookForRecovery(now);
        wasAway |= !now.ControllerRuns;
        NoteBackstops();
        foreach (var happened in now.Events)
        {
            if (happened.Kind == EventKind.Alarm && happened.What == AlarmState.Unacknowledged.InWords())
            {
                alarmAt ??= now.Elapsed;
            }
            else if (happened.Kind == EventKind.Interlock && happened.What is "acts" or "latched")
            {
                tripAt ??= now.Elapsed;
            }
        }
    }

    private void NoteBackstops()
    {
        foreach (var rack in run.Plant.Racks)
        {
            if (rack.IsFloatCutoutOpen)
            {
                acted.Add(WiredBackstop.FloatCutout);
            }

            if (rack.IsTimeCutoutOpen)
            {
                acted.Add(WiredBackstop.TimeCutout);
            }
        }

        for (var index = 0; index < run.Plant.Circuits.Length; index++)
        {
            var breaker = run.Plant.Circuits[index].Breaker;
            if (breaker != BreakerState.Closed && !isTripped[index])
            {
                acted.Add(breaker == BreakerState.TrippedByGroundFault ? WiredBackstop.GroundFaultProtection : WiredBackstop.Breaker);
            }
        }
    }

    private Instant RepairedAt => drawn.Start + drawn.AllOver;

    // By when it had to be well again, or when the run ended before.
    private Duration DueAgain => Duration.Min(Deadline, run.Now.Elapsed);

    private string Missed => missed.At == Deadline ? missed.Words : Missing;

    private string Missing => recovery.Missing(run.Now, RepairedAt, [.. Attendant.Standing(run).Select(alarm => alarm.Key)]);

    private void LookForRecovery(IObserved now)
    {
        if (isWellAgain || now.Elapsed <= drawn.AllOver)
        {
            return;
        }

        if (now.Elapsed <= Deadline)
        {
            isWellAgain = recovery.IsWell(now, RepairedAt);

            // Just after it, when what is missing is written down.
            now.LookAgainBy(Deadline + Duration.Epsilon);
        }
        else if (missed.At != Deadline)
        {
            missed = (Deadline, Missing);
        }
    }

    private CaseOutcome Outcome(FailureClass how, string seen) => new(drawn, how, seen)
    {
        Hazards = hazards.Hazards,
        ToAlarm = alarmAt - drawn.Faults[0].At,
        ToTrip = tripAt - drawn.Faults[0].At,
        Length = run.Now.Elapsed,
        DueAgain = DueAgain,
        Deeds = [.. attendant.Deeds],
        Acted = [.. acted],
    };
}
