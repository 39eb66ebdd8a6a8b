using RackController.Model;

namespace RackController.Control;

/// <summary>The rows that see by a sensor at the canopy what a light really does.</summary>
internal static class LightRows
{
    public static CauseAndEffectRow LightMissing { get; } = new(
        "light-missing", "a light is told on and its tier stays dark", "light level of the tier", RowEffect.Tell, "a person is told",
        "by itself once light is seen; while the light is told off, or the reading is unknown, its last answer stands",
        new AlarmText(
            AlarmPriority.Medium, "the crop there has no light",
            "look at the light, its plug, its relay, the breaker and the ground-fault protection; see that nothing covers the sensor",
            "within a day"))
    {
        Instances = (row, site) => At(site, (rack, tier, sensor) => new LightMissing(row, site, rack, tier, sensor)),
    };

    public static CauseAndEffectRow LightUnasked { get; } = new(
        "light-unasked", "a light is told off and its tier stays lit", "light level of the tier", RowEffect.Tell, "a person is told",
        "by itself once the tier is dark or the light is told on; while the reading is unknown, its last answer stands",
        new AlarmText(
            AlarmPriority.Medium, "the crop has no night, and a lamp that no relay puts out heats on when the air is too hot",
            "if the lamp is on, pull its plug and change its relay; if not, keep other light away or raise light-unasked-above",
            "within a day"))
    {
        Instances = (row, site) => At(site, (rack, tier, sensor) => new LightUnasked(row, site, rack, tier, sensor)),
    };

    // A lamp that is said to give no light has nothing to be compared with.
    private static IEnumerable<Interlock> At(InterlockSite site, Func<Rack, Tier, Sensor, Interlock> make) =>
        from rack in site.Site.Racks
        from sensor in site.SensorsOf(rack, SensorKind.LightLevel)
        let tier = rack.Tier(sensor.TierNumber!.Value)
        where tier.Light is not null && tier.LitLux > 0
        select make(rack, tier, sensor);
}
