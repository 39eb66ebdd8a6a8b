using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Switches everything on a circuit off for a moment when a load that is told off seems to draw current, when two sensors differ about it,
/// or when none could tell whether a pump stopped. What the circuit carries then flows where it should not, and a sensor that does not
/// follow is one that hears nothing. Hazard: a pump that runs on because something else died, or was switched, as its relay welded.
/// <para>It waits while a pump or valve of the circuit is told on: nobody's flood is cut short by a suspicion. But for a pump's sake it
/// waits while hands are in a rack on the circuit, and each check that found nothing doubles the wait for the next, up to a day: a pump
/// that nothing but its circuit can tell of is looked for as soon as it may run. What a dark moment has shown to flow is known, and is
/// looked at again when its current falls, and after a day, since nobody can reset what is thought to flow still.</para>
/// </summary>
internal sealed class WeldCheck : Interlock
{
    // Longer than a current takes to settle and a slow sensor to be read.
    private static readonly Duration lasts = Duration.FromSeconds(8);

    // A current that is seen to settle raises no suspicion.
    private static readonly Duration borne = Duration.FromSeconds(10);
    private static readonly Duration apart = Duration.FromMinutes(10);

    // A doubt that outlasts its check is one of which somebody is told; now and then it is looked whether it was repaired.
    private static readonly Duration apartInOneDoubt = Duration.FromHours(1);
    private static readonly Duration apartAtMost = Duration.FromHours(24);
    private readonly Load load;
    private readonly SensorId sensor;
    private readonly SensorId? wire;
    private readonly ImmutableArray<LoadId> waterLoads;
    private Duration wait;
    private MonotonicTime? doubtedSince;
    private MonotonicTime? checkedAt;
    private MonotonicTime? until;
    private bool wasOn;
    private bool mayHaveStayedOn;
    private bool isCheckedDoubt;

    /// <summary>Makes the check of one load.</summary>
    /// <param name="row">The row.</param>
    /// <param name="at">Its site.</param>
    /// <param name="load">The load.</param>
    /// <param name="sensor">The sensor of its circuit.</param>
    public WeldCheck(CauseAndEffectRow row, InterlockSite at, Load load, SensorId sensor)
        : base(row, Place.Of(load), at.LoadsOf(at.Site[load.Circuit]))
    {
        this.load = load;
        this.sensor = sensor;
        wire = LoadCurrents.InItsWire(at.Site, load)?.Id;
        waterLoads = [.. Loads.Where(each => at.Site[each].Kind is LoadKind.Pump or LoadKind.Valve)];
    }

    // Each load that comes back is judged by itself.
    public override bool StagesReturn => true;

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        until = now < until ? until : null;
        FollowDoubt(facts);
        if (until is null && doubtedSince is { } since && CanLook(facts, agenda))
        {
            var due = Due(facts, since);
            agenda.Add(due);
            if (now >= due)
            {
                wait = wait == Duration.Zero ? apart : Duration.Min(apartAtMost, wait + wait);
                (until, checkedAt, isCheckedDoubt) = (now + lasts, now, true);
            }
        }

        agenda.Add(until ?? MonotonicTime.Never);
        return until is not null;
    }

    public override string Words(ClockFace clock) =>
        $"everything on its circuit is off for a moment, to see whether {load.Name} draws current though it is told off";

    // Nobody knows where its relay stayed through a restart that left the air on.
    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        mayHaveStayedOn = load.Kind == LoadKind.Pump && !memory.IsEmpty;
    }

    private MonotonicTime Due(Facts facts, MonotonicTime since)
    {
        var isKnown = isCheckedDoubt && facts.FlowOf(load.Id) == Flow.Flows;
        var least = isKnown ? apartAtMost : isCheckedDoubt ? apartInOneDoubt : apart;
        var waits = !isCheckedDoubt && MustBeFoundSoon(facts) ? least : Duration.Max(least, wait);
        var (seen, again) = (since + borne, checkedAt + waits);
        return again is { } next && seen < next ? next : seen;
    }

    // Nobody else could tell that it runs on.
    private bool MustBeFoundSoon(Facts facts) => load.Kind == LoadKind.Pump && !(wire is { } own && facts.IsKnown(own));

    private bool CanLook(Facts facts, Agenda agenda)
    {
        foreach (var each in waterLoads)
        {
            if (facts.WasOn(each))
            {
                return false;
            }
        }

        return facts.Conditions.Io.IsOk && facts.IsKnown(sensor) && !facts.WasCut(load.Circuit)
            && (load.Kind == LoadKind.Pump || !facts.MayHaveHandsIn(load.Circuit, agenda));
    }

    private void FollowDoubt(Facts facts)
    {
        var (isOn, flow) = (facts.WasOn(load.Id), facts.FlowOf(load.Id));
        mayHaveStayedOn = load.Kind == LoadKind.Pump && !isOn && flow == Flow.Unknown && (wasOn || mayHaveStayedOn);
        wasOn = isOn;
        var isInDoubt = !isOn && (flow is Flow.SeemsToFlow or Flow.Flows || mayHaveStayedOn);
        var now = facts.Now.Monotonic;

        // What was quiet for a day begins anew, and what was found.
        (checkedAt, wait) = doubtedSince is null && now >= checkedAt + apartAtMost ? (null, Duration.Zero) : (checkedAt, wait);
        wait = isInDoubt && flow == Flow.Flows && !isCheckedDoubt ? Duration.Zero : wait;
        doubtedSince = isInDoubt ? doubtedSince ?? now : null;

        // Told on and off, it is the same: it stops when it is seen to.
        isCheckedDoubt &= isOn || flow != Flow.Still;
    }
}
