using RackController.Model;

namespace RackController.Control;

/// <summary>Tells of a light that was told on and of which nothing is seen at the canopy: burnt out, unplugged, behind a relay that no
/// longer closes or a breaker that nobody watches. Hazard: a crop in the dark, which no sensor of a current need see. A dead lamp does
/// not heal overnight, so it stands until light is seen.</summary>
internal sealed class LightMissing(CauseAndEffectRow row, InterlockSite site, Rack rack, Tier tier, Sensor sensor)
    : Interlock(row, Place.Of(rack, tier.Number), [])
{
    private readonly Limit dark = site.Limit(sensor, tier.LitLux * rack.Limits.LightMissingBelowPercent / 100);
    private readonly LightContradiction contradiction = new(rack.Limits.LightSeenWithin);

    public override string Settings =>
        $"below {dark.Value:0} lx, {rack.Limits.LightMissingBelowPercent:0.#} % of the light's own, for "
        + rack.Limits.LightSeenWithin.InWords();

    protected override bool IsPresent(Facts facts, Agenda agenda) => facts.IsKnown(sensor.Id) && facts.WasOn(tier.Light!.Value)
        ? contradiction.Look(facts.IsBelow(dark), facts, agenda)
        : contradiction.Stands();

    protected override bool HasNoMeaning(Facts facts) => !facts.IsTierInUse(rack.Id, tier.Number);

    public override string Words(ClockFace clock) =>
        $"the light of tier {tier.Number} is told on and its tier shows less than {dark.Value:0} lx";
}
