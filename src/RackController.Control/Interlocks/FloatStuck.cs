using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Doubts a tray's full float that does not move over some floods. Only these floats move in every flood: a high float, a low float
/// and a leak rope never do while all is well, and only a proof test moves them. Hazard: a float that says full ends fills
/// too early and one that says dry never does, and neither is noticed. Where the row forbids, it latches, and nobody lets it go
/// before the float has passed a proof test; where it only tells, it goes once the float moves.
/// </summary>
internal sealed class FloatStuck(
    CauseAndEffectRow row, Rack rack, Sensor sensor, int floods, ImmutableArray<LoadId> loads)
    : Interlock(row, Place.Of(sensor), loads)
{
    private bool? wasClosed;
    private long? filledFlood;
    private bool hasMoved;
    private bool owesTest;
    private int stillFloods;

    public override string Settings => $"{floods.Times()} without a move";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        FollowFloat(facts);
        FollowFloods(facts);
        if (Row.Effect == RowEffect.Tell)
        {
            return stillFloods >= floods;
        }

        if (stillFloods >= floods && !IsLatched)
        {
            owesTest = true;
            Latch();
        }

        if (owesTest && facts.HasJustPassed(sensor.Id))
        {
            owesTest = false;
            Changed();
        }

        return owesTest;
    }

    public override string Words(ClockFace clock) => IsLatched
        ? $"{sensor.Name} did not move in {floods} floods and {(Present ? "must pass" : "has passed")} a proof test"
        : $"{sensor.Name} did not move in {floods} floods";

    protected override void SaveOwn(MemoryWriter memory)
    {
        memory.Put($"{Key}/still floods", stillFloods);
        memory.Put($"{Key}/owes test", owesTest ? 1 : 0);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        stillFloods = (int)Math.Clamp(memory.Number($"{Key}/still floods") ?? 0, 0, floods);
        owesTest = memory.Number($"{Key}/owes test") == 1;
    }

    protected override void Forget() => stillFloods = 0;

    private void FollowFloat(Facts facts)
    {
        if (!facts.IsKnown(sensor.Id))
        {
            return;
        }

        var isClosed = facts.IsClosed(sensor.Id);
        if (wasClosed == !isClosed)
        {
            hasMoved = true;
            HasBeenStillFor(0);
        }

        wasClosed = isClosed;
    }

    private void FollowFloods(Facts facts)
    {
        var filled = facts.About(rack.Id).FilledFlood;
        if (filledFlood is { } before && filled != before)
        {
            HasBeenStillFor(
                hasMoved || !facts.IsTierInUse(rack.Id, sensor.TierNumber!.Value) ? 0 : Math.Min(stillFloods + 1, floods));
            hasMoved = false;
        }

        filledFlood = filled;
    }

    private void HasBeenStillFor(int count)
    {
        if (count != stillFloods)
        {
            stillFloods = count;
            Changed();
        }
    }
}
