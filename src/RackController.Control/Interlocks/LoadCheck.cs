using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Switches an aerator or fan off for a moment, one after the other, to see the current of their circuit fall and rise again: now and
/// then, and whenever that current seems to say that one has stopped. What never switches is otherwise never known to be alive, and a
/// few watts do not show among lights. Hazard: a dead aerator that nobody notices.
/// </summary>
internal sealed class LoadCheck : Interlock
{
    // Longer than a current takes to settle and a slow sensor to be read.
    private static readonly Duration lasts = Duration.FromSeconds(8);
    private static readonly Duration apart = Duration.FromSeconds(30);
    private static readonly Duration inDoubt = Duration.FromMinutes(10);
    private readonly CircuitLimits limits;
    private readonly SensorId sensor;
    private readonly MonotonicTime[] switchedAt;
    private readonly bool[] told;
    private readonly bool[] wasChecked;
    private MonotonicTime until;
    private int checkedLoad = -1;

    public LoadCheck(
        CauseAndEffectRow row, Circuit circuit, CircuitLimits limits, ImmutableArray<LoadId> loads, SensorId sensor, MonotonicTime start)
        : base(row, Place.Of(circuit), loads)
    {
        this.limits = limits;
        this.sensor = sensor;
        switchedAt = new MonotonicTime[loads.Length];
        Array.Fill(switchedAt, start);
        told = new bool[loads.Length];
        wasChecked = new bool[loads.Length];
        until = start;
    }

    public override string Settings => $"every {limits.LoadCheckEvery.InWords()}";

    public override bool ActsOn(LoadId load) => checkedLoad >= 0 && Loads[checkedLoad] == load;

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        Follow(facts);
        if (now >= until && checkedLoad >= 0)
        {
            checkedLoad = -1;
            until = now + apart;
        }

        if (now >= until && facts.Conditions.Io.IsOk && facts.IsKnown(sensor))
        {
            Choose(facts, agenda);
        }

        if (now < until)
        {
            agenda.Add(until);
        }

        return checkedLoad >= 0;
    }

    public override string Words(ClockFace clock) => "it is off for a moment, to see by the current whether it is alive";

    private void Follow(Facts facts)
    {
        for (var i = 0; i < told.Length; i++)
        {
            var isTold = facts.WasOn(Loads[i]);
            switchedAt[i] = isTold != told[i] ? facts.Now.Monotonic : switchedAt[i];
            told[i] = isTold;
        }
    }

    private void Choose(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        for (var i = 0; i < told.Length && checkedLoad < 0; i++)
        {
            var flow = facts.FlowOf(Loads[i]);
            var isInDoubt = flow == Flow.SeemsStill || (flow == Flow.Unknown && !wasChecked[i]);
            var due = switchedAt[i] + (isInDoubt ? inDoubt : limits.LoadCheckEvery);
            if (told[i] && now >= due)
            {
                checkedLoad = i;
                wasChecked[i] = true;
                until = now + lasts;
            }
            else if (told[i])
            {
                agenda.Add(due);
            }
        }
    }
}
