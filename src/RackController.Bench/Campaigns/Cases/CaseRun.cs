using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Runs one case: nothing but the controller, the simulated rack, the hazard watches, a person who comes afterwards, and
/// what is owed to the crops. It ends once the site floods again and nothing is left to be done, or when that is overdue.</summary>
internal sealed class CaseRun
{
    private static readonly Duration personAndRests = Duration.FromMinutes(90);
    private readonly Site site;
    private readonly FaultFreeDays days;
    private readonly CampaignCase drawn;
    private readonly Attendant attendant;
    private readonly VirtualRun run;
    private readonly HazardBook hazards;
    private readonly IHazardWatch[] watches;
    private readonly CropDuties duties;
    private Duration? alarmAt;
    private Duration? tripAt;

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
    }

    /// <summary>Runs it.</summary>
    public static CaseOutcome Run(Site site, FaultFreeDays days, CampaignCase drawn)
    {
        var made = new CaseRun(site, days, drawn);
        try
        {
            return made.ToTheEnd();
        }
        catch (Exception defect) when (defect is not OutOfMemoryException)
        {
            return made.Outcome(FailureClass.Crash, $"{defect.GetType().Name}: {defect.Message}");
        }
    }

    private Duration Deadline => drawn.AllOver + personAndRests + days.LongestBetweenFloods;

    private CaseOutcome ToTheEnd()
    {
        var end = MonotonicTime.Zero + Deadline;
        run.Begin();
        Look();
        while (!IsWellAgain && run.Step(end))
        {
            Look();
        }

        duties.Close(run.Now);
        if (!hazards.Hazards.IsEmpty)
        {
            return Outcome(FailureClass.Hazard, hazards.Hazards[0].Seen);
        }

        if (!IsWellAgain)
        {
            return Outcome(FailureClass.Stuck, StuckWords);
        }

        return alarmAt is null && !wasAway && Shortfall.Of(site, days.Duties, duties, drawn.Start, run.Now.At) is { } lost
            ? Outcome(FailureClass.Silent, lost)
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
        wasAway |= !now.ControllerRuns;
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

    private bool IsWellAgain => run.Now.Elapsed > drawn.AllOver && attendant.IsContent && site.Racks.All(FloodedAgain);

    // Every tray that is flooded when nothing fails, by a flood that began after the repair and is over.
    private bool FloodedAgain(Rack rack)
    {
        var repairedAt = drawn.Start + drawn.AllOver;
        if (days.Duties.FillsBegun(rack.Id).Count == 0)
        {
            return true;
        }

        var fills = duties.FillsBegun(rack.Id);
        if (fills.Count == 0 || fills[^1] < repairedAt || run.Now.Flood(rack.Id) is not FloodPhase.Idle)
        {
            return false;
        }

        for (var index = 0; index < rack.Tiers.Length; index++)
        {
            var wetted = duties.Wetted(rack.Id, index);
            if (days.Duties.Wetted(rack.Id, index).Count > 0 && (wetted.Count == 0 || wetted[^1] < repairedAt))
            {
                return false;
            }
        }

        return true;
    }

    private string StuckWords
    {
        get
        {
            var dry = string.Join(", ", site.Racks.Where(rack => !FloodedAgain(rack)).Select(rack => rack.Name));
            var standing = run.Control is { } control ? string.Join(", ", control.Alarms().Select(alarm => alarm.Key)) : "no controller";
            return (dry.Length > 0 ? $"{dry} did not flood again" : "alarms stayed")
                + $" within {Spans.Words(Deadline - drawn.AllOver)} of the repair" + (standing.Length > 0 ? $"; {standing} stands" : "");
        }
    }

    private CaseOutcome Outcome(FailureClass how, string seen) => new(drawn, how, seen)
    {
        Hazards = hazards.Hazards,
        ToAlarm = alarmAt - drawn.Faults[0].At,
        ToTrip = tripAt - drawn.Faults[0].At,
        Length = run.Now.Elapsed,
        Deeds = [.. attendant.Deeds],
    };
}
