using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Keeps a pump from starting while a tray still holds the flood before. Hazard: a blocked weep, by which roots drown a little more
/// with every flood and a standpipe is all that is left. It never stops a flood under way. A sensor whose word is unknown holds
/// nothing: a flood on top of another runs off through the standpipe, and what guards that is the high float.
/// </summary>
internal sealed class NotDrained : Interlock
{
    private readonly Rack rack;
    private readonly ImmutableArray<(Sensor Sensor, Limit? Drained)> senses;
    private readonly ShownUnit unit;
    private string wet = "";

    public NotDrained(CauseAndEffectRow row, InterlockSite site, Rack rack, ImmutableArray<Sensor> sensors)
        : base(row, Place.Of(rack), [rack.Pump.Load])
    {
        this.rack = rack;
        unit = site.Site.Units.Of("mm");
        senses = [.. sensors.Select(sensor =>
            (sensor, sensor.IsContact ? null : site.Limit(sensor, rack.Limits.NotDrainedAboveMm)))];
    }

    public override string Settings => $"above {unit.Limit(rack.Limits.NotDrainedAboveMm)}";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        // A tray that drains in its own time is in the ordinary course of things, until a flood waits for it.
        IsInDoubt = !facts.About(rack.Id).IsFloodWaiting;
        if (facts.WasOn(rack.Pump.Load))
        {
            return false;
        }

        foreach (var (sensor, drained) in senses)
        {
            if (facts.IsKnown(sensor.Id) && facts.IsTierInUse(rack.Id, sensor.TierNumber!.Value)
                && (drained is null ? facts.IsClosed(sensor.Id) : facts.IsAbove(drained)))
            {
                wet = sensor.Name;
                return true;
            }
        }

        return false;
    }

    public override string Words(ClockFace clock) => $"{wet} still reads wet, so its tray has not drained";
}
