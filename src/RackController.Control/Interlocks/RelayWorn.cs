using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Tells that a relay has switched as often as it is made for: from then on its contacts may weld or stop closing any day. The count goes
/// on over restarts. It is remembered with whatever else is, and by itself only now and then, to spare a memory card; a power cut loses
/// few of many. To reset says that the relay was changed.
/// </summary>
internal sealed class RelayWorn(CauseAndEffectRow row, Rack rack, Load load) : Interlock(row, Place.Of(rack, load), [])
{
    private const int RememberedInAll = 1_000;
    private long operations;
    private bool wasOn = load.SafeState == SwitchState.On; // what is on at rest has not been switched on by a start

    public override string Settings => $"{load.RatedOperations} operations";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var isOn = facts.WasOn(load.Id);
        if (isOn && !wasOn)
        {
            Count();
        }

        wasOn = isOn;
        return false;
    }

    public override string Words(ClockFace clock) =>
        $"the relay of {load.Name} has switched {operations} times and is made for {load.RatedOperations}";

    protected override void SaveOwn(MemoryWriter memory)
    {
        memory.Put($"{Key}{RelayCount.Name}", operations);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        operations = memory.Number(RelayCount.KeyOf(Key)) ?? 0;
    }

    protected override void Forget() => operations = 0;

    private void Count()
    {
        operations++;
        if (operations >= load.RatedOperations)
        {
            Latch();
        }

        if (operations % Math.Max(1, load.RatedOperations / RememberedInAll) == 0)
        {
            Changed();
        }
    }
}
