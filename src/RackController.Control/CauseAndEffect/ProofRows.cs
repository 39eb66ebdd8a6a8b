using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>The rows that doubt what nobody would otherwise notice: floats that lie, and what was not tested for long.</summary>
internal static class ProofRows
{
    public static CauseAndEffectRow FloatsContradict { get; } = new(
        "floats-contradict", "a float is dry below one that is wet, or a low float is wet far above the level",
        "two floats in one reservoir or tray, or a low float and a reservoir level",
        RowEffect.ForbidOn, "pump off", "operator reset, after a passed proof test of every float involved",
        new AlarmText(
            AlarmPriority.High, "a float will not act when it must; floods are held and crops dry out",
            "look which of them is stuck; repair it; pass the proof test of each; reset", "within four hours"))
    {
        Returns = WaysBack.Reset,
        Instances = (row, site) =>
            from rack in site.Site.Racks
            from at in FloatPair.Of(site, rack)
            select new FloatsContradict(row, rack, at.Vessel, at.Pairs),
    };

    public static CauseAndEffectRow FloatStuck { get; } = new(
        "float-stuck", "a tray's full float did not move over many floods that it should have ended",
        "tray full float, and fills until full", RowEffect.ForbidOn, "pump may not start",
        "operator reset, after a passed proof test of the float",
        new AlarmText(
            AlarmPriority.High, "floods are held and crops dry out", "free or replace the float, or the pipe that leaves its tray dry; "
            + "pass its proof test; reset", "within four hours"))
    {
        Returns = WaysBack.Reset,
        Instances = (row, site) => Floats(site).Select(
            at => new FloatStuck(row, at.Rack, at.Float, at.Rack.Limits.StillFloodsToForbid, [at.Rack.Pump.Load])),
    };

    public static CauseAndEffectRow FloatStill { get; } = new(
        "float-still", "a tray's full float did not move over some floods that it should have ended",
        "tray full float, and fills until full", RowEffect.Tell, "a person is told", "by itself once the float moves",
        new AlarmText(
            AlarmPriority.Medium, "a tray fills too little or too long; after more such floods the pump is held",
            "do the proof test of the float; look whether water comes to its tray", "within a day"))
    {
        Instances = (row, site) => Floats(site).Select(
            at => new FloatStuck(row, at.Rack, at.Float, at.Rack.Limits.StillFloodsToTell, [])),
    };

    public static CauseAndEffectRow ProofTestFailed { get; } = new(
        "proof-test-failed", "a sensor or relay failed its proof test", "a proof test", RowEffect.Tell, "a person is told",
        "by itself once every failed test of the rack or circuit is passed",
        new AlarmText(
            AlarmPriority.High, "what goes by it protects nothing any more", "repair or replace it, and test it again",
            "within four hours"))
    {
        Scope = RowScope.RackAndCircuit,
        Instances = (row, site) => Places(site).Select(place => new ProofTestFailed(row, place)),
    };

    public static CauseAndEffectRow ProofTestOverdue { get; } = new(
        "proof-test-overdue", "a proof test of a float, leak rope, sense, current sensor or relay is overdue", "nothing",
        RowEffect.Tell, "a person is told, once for all of a rack or circuit", "by itself once the tests are passed",
        new AlarmText(
            AlarmPriority.Low, "what has failed unseen stays unseen", "do the proof tests of the rack", "within a week"))
    {
        Scope = RowScope.RackAndCircuit,
        Instances = (row, site) => Places(site).Select(place => new ProofTestOverdue(row, place)),
    };

    private static ImmutableArray<Place> Places(InterlockSite site) =>
        [.. site.Site.Racks.Select(Place.Of), .. site.Site.Circuits.Select(Place.Of)];

    private static IEnumerable<(Rack Rack, Sensor Float)> Floats(InterlockSite site) =>
        from rack in site.Site.Racks
        where rack.Schedule.Floods.Fill is FillUntilFull
        from each in site.SensorsOf(rack, SensorKind.TrayFullFloat)
        select (rack, each);
}
