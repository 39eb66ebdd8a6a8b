using RackController.Model;

namespace RackController.Control;

/// <summary>Tells of a light that was told off while its tier stays lit: a relay that welded, or somebody who plugged the lamp in
/// elsewhere. Hazard: a lamp that the controller cannot put out when the air gets too hot, and a crop without a night. A light that is told
/// on shines by right.</summary>
internal sealed class LightUnasked(CauseAndEffectRow row, InterlockSite site, Rack rack, Tier tier, Sensor sensor)
    : Interlock(row, Place.Of(rack, tier.Number), [])
{
    private readonly Limit lit = site.Limit(sensor, tier.LitLux * rack.Limits.LightUnaskedAbovePercent / 100);
    private readonly LightContradiction contradiction = new(rack.Limits.LightSeenWithin);

    public override string Settings =>
        $"above {lit.Value:0} lx, {rack.Limits.LightUnaskedAbovePercent:0.#} % of the light's own, for "
        + rack.Limits.LightSeenWithin.InWords();

    protected override bool IsPresent(Facts facts, Agenda agenda) => facts.WasOn(tier.Light!.Value)
        ? contradiction.Look(isSeen: false, facts, agenda)
        : facts.IsKnown(sensor.Id) ? contradiction.Look(facts.IsAbove(lit), facts, agenda) : contradiction.Stands();

    public override string Words(ClockFace clock) =>
        $"the light of tier {tier.Number} is told off and its tier shows more than {lit.Value:0} lx";
}
