using RackController.Model;

namespace RackController.Control;

/// <summary>
/// One rack's flood cycle: waiting, filling, soaking, draining. It counts monotonic time only. The pump's own command of the
/// scan before tells it what really happens: a flood begins when the pump was told on, and is cut short when an interlock
/// told it off. A flood that was cut short while it filled, by an interlock or by a restart, is tried once more when the trays
/// have drained and the pump may start: a crop that is flooded once a day must not lose the day to a float that bobbed. Cut
/// short again it is given up, and so is any under a schedule that lets missed floods go. A flood that waits does so without
/// limit: a late flood is better than none, and when the next one comes due the two are one.
/// </summary>
internal sealed class FloodCycle
{
    private readonly Rack rack;
    private readonly string key;
    private readonly FullTrays? fullTrays;
    private bool cutByRestart;
    private readonly bool wasFillingAtRestart;
    private bool isSecondTry;

    public FloodCycle(
        Site site, Rack rack, string key, MemoryReader memory, MonotonicTime start, ICollection<SensorLevel> levels)
    {
        this.rack = rack;
        this.key = key;
        fullTrays = rack.Schedule.Floods.Fill is FillUntilFull full ? new FullTrays(site, rack, full.FullDepthMm, levels) : null;
        Number = memory.Number($"{key}/flood-number") ?? 0;
        FillHitItsLimit = fullTrays is not null && memory.Number($"{key}/fill-hit-its-limit") == 1;
        PhaseBegan = start;

        isSecondTry = memory.Number($"{key}/flood-second-try") == 1;
        wasFillingAtRestart = memory.Number($"{key}/flood-filling") == 1;
        AnotherFollows = isSecondTry && !wasFillingAtRestart;

        // How far the trays had drained is unknown, so they drain anew.
        cutByRestart = AnotherFollows || memory.Number($"{key}/flood-wet") == 1;
        Phase = cutByRestart ? FloodPhase.Draining : FloodPhase.Idle;
    }

    /// <summary>Where the cycle is.</summary>
    public FloodPhase Phase { get; private set; }

    /// <summary>Since when.</summary>
    public MonotonicTime PhaseBegan { get; private set; }

    /// <summary>How many floods have begun, ever. A second try is the same flood.</summary>
    public long Number { get; private set; }

    /// <summary>The number of the last flood of this controller whose fill was not cut short; 0 before the first.</summary>
    public long FilledFlood { get; private set; }

    /// <summary>Whether the last fill that ended took as long as it may without every tray reading full.</summary>
    public bool FillHitItsLimit { get; private set; }

    /// <summary>Whether another flood follows once the trays have drained.</summary>
    public bool AnotherFollows { get; private set; }

    /// <summary>Whether a flood has been called for and has not begun.</summary>
    public bool IsOwed => Phase == FloodPhase.Waiting || AnotherFollows;

    /// <summary>Whether the pump should run, or should as soon as it may.</summary>
    public bool WantsPump => Phase is FloodPhase.Waiting or FloodPhase.Filling or FloodPhase.Soaking;

    /// <summary>Rises when something changed that must be remembered.</summary>
    public long Version { get; private set; }

    /// <summary>When this phase ends by itself; never when that hangs on something else.</summary>
    public MonotonicTime PhaseEnds => Phase switch
    {
        FloodPhase.Filling => PhaseBegan + rack.Schedule.Floods.Fill.Limit,
        FloodPhase.Soaking => PhaseBegan + rack.Schedule.Floods.Soak,
        FloodPhase.Draining => PhaseBegan + rack.Schedule.Floods.Drain,
        _ => MonotonicTime.Never,
    };

    /// <summary>A flood should run.</summary>
    /// <returns>Whether it is owed; false when the flood under way serves it.</returns>
    public bool Call(string because, in Moment now, IEventSink events)
    {
        if (IsOwed)
        {
            Tell(FloodEvent.Merged, $"{because}, but one already waits", now, events);
            return true;
        }

        if (Phase is FloodPhase.Filling or FloodPhase.Soaking)
        {
            Tell(FloodEvent.Merged, $"{because}, but one is under way", now, events);
            return false;
        }

        Tell(FloodEvent.Due, because, now, events);
        if (Phase == FloodPhase.Draining)
        {
            AnotherFollows = true;
        }
        else
        {
            Enter(FloodPhase.Waiting, now);
        }

        return true;
    }

    /// <summary>A flood that has not begun will not.</summary>
    public void Drop(string because, in Moment now, IEventSink events)
    {
        Tell(FloodEvent.LeftOut, because, now, events);
        AnotherFollows = false;
        isSecondTry = false;
        if (Phase == FloodPhase.Waiting)
        {
            Enter(FloodPhase.Idle, now);
        }

        Version++;
    }

    /// <summary>Moves as far as this scan's facts carry it.</summary>
    /// <returns>Whether a flood began to fill, for the first time or the second.</returns>
    public bool Update(Facts facts, TiersInUse tiers, Agenda agenda, IEventSink events)
    {
        if (cutByRestart)
        {
            cutByRestart = false;
            Tell(FloodEvent.Draining, "the controller started anew and the trays may hold water", facts.Now, events);
            if (wasFillingAtRestart)
            {
                TryOnceMore(facts.Now, events);
            }
        }

        var begins = Phase == FloodPhase.Waiting && facts.WasOn(rack.Pump.Load);
        if (begins)
        {
            Fill(facts.Now, events);
        }

        if (Phase is FloodPhase.Filling or FloodPhase.Soaking && !(facts.WasOn(rack.Pump.Load) && tiers.Count > 0))
        {
            CutShort(facts.Now, tiers, events);
        }

        if (Phase == FloodPhase.Filling)
        {
            SoakOnceFull(facts, tiers, events);
        }

        if (Phase == FloodPhase.Soaking && facts.Now.Monotonic >= PhaseEnds)
        {
            Drain("the time to soak is over", facts.Now, events);
        }

        if (Phase == FloodPhase.Draining && facts.Now.Monotonic >= PhaseEnds)
        {
            EndDraining(facts.Now, events);
        }

        agenda.Add(PhaseEnds);
        return begins;
    }

    public void Save(MemoryWriter writer)
    {
        writer.Put($"{key}/flood-number", Number);
        writer.Put($"{key}/fill-hit-its-limit", FillHitItsLimit ? 1 : 0);
        writer.Put($"{key}/flood-second-try", isSecondTry ? 1 : 0);
        writer.Put($"{key}/flood-filling", Phase == FloodPhase.Filling ? 1 : 0);
        writer.Put($"{key}/flood-wet", Phase is FloodPhase.Filling or FloodPhase.Soaking or FloodPhase.Draining ? 1 : 0);
    }

    private void Fill(in Moment now, IEventSink events)
    {
        Number += isSecondTry ? 0 : 1;
        Enter(FloodPhase.Filling, now);
        Tell(FloodEvent.Filling, "the pump runs", now, events);
    }

    private void CutShort(in Moment now, TiersInUse tiers, IEventSink events)
    {
        var wasFilling = Phase == FloodPhase.Filling;
        var because = tiers.Count > 0 ? "the pump was told off" : "every tier is out of use";
        Tell(FloodEvent.CutShort, $"{because} while {(wasFilling ? "filling" : "soaking")}", now, events);
        Drain("the flood was cut short", now, events);
        if (wasFilling && tiers.Count > 0)
        {
            TryOnceMore(now, events);
        }
    }

    private void SoakOnceFull(Facts facts, TiersInUse tiers, IEventSink events)
    {
        var isFull = fullTrays?.AllFull(facts, tiers) ?? false;
        if (!isFull && facts.Now.Monotonic < PhaseEnds)
        {
            return;
        }

        FillHitItsLimit = fullTrays is not null && !isFull;
        if (FillHitItsLimit)
        {
            var limit = rack.Schedule.Floods.Fill.Limit.InWords();
            Tell(FloodEvent.FillLimit, $"not every tray read full within {limit}", facts.Now, events);
        }

        isSecondTry = false;
        FilledFlood = Number;
        Enter(FloodPhase.Soaking, facts.Now);
        Tell(
            FloodEvent.Soaking, isFull ? "every tray reads full" : "the time to fill is over", facts.Now, events);
    }

    private void EndDraining(in Moment now, IEventSink events)
    {
        Tell(FloodEvent.Drained, "the trays have had their time to drain", now, events);
        Enter(AnotherFollows ? FloodPhase.Waiting : FloodPhase.Idle, now);
        AnotherFollows = false;
    }

    private void TryOnceMore(in Moment now, IEventSink events)
    {
        var triesAgain = !isSecondTry && rack.Schedule.Floods.Missed == MissedFloods.RunOne;
        isSecondTry = triesAgain;
        AnotherFollows = triesAgain;
        Version++;
        if (triesAgain)
        {
            Tell(FloodEvent.Due, "it was cut short while filling and is tried once more", now, events);
        }
    }

    private void Drain(string because, in Moment now, IEventSink events)
    {
        Enter(FloodPhase.Draining, now);
        Tell(FloodEvent.Draining, because, now, events);
    }

    private void Enter(FloodPhase phase, in Moment now)
    {
        Phase = phase;
        PhaseBegan = now.Monotonic;
        Version++;
    }

    private void Tell(string what, string because, in Moment now, IEventSink events) =>
        events.Take(new ControlEvent(now, EventKind.Flood, rack.Name, what, because));
}
