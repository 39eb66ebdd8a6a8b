using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Every level that somebody who looks on at a run must not miss: those of its expectations, hazard watches and
/// recorders.</summary>
internal static class RunLevels
{
    /// <summary>The levels of a scenario.</summary>
    public static IEnumerable<WatchedLevel> Of(Scenario scenario) =>
        scenario.Expectations.SelectMany(Statements).SelectMany(statement => statement.Levels(scenario.Site))
            .Concat(Of(scenario.Site));

    /// <summary>The levels that matter on a site whatever is expected.</summary>
    public static IEnumerable<WatchedLevel> Of(Site site) => site.Racks.SelectMany(Of);

    private static IEnumerable<WatchedLevel> Of(Rack rack)
    {
        yield return new WatchedLevel(rack.Id, RackQuantity.OntoFloor, null, WaterOnTheFloor.ToleratedL);
        foreach (var tier in rack.Tiers)
        {
            yield return new(rack.Id, RackQuantity.TrayDepth, tier.Number, FloodTray.DrainedBelowMm);
            yield return new(rack.Id, RackQuantity.TrayDepth, tier.Number, tier.Tray.FilledMm);
            yield return new(rack.Id, RackQuantity.AirTemperature, tier.Number, rack.Limits.AirHotC);
        }
    }

    private static IEnumerable<Statement> Statements(Expectation expectation) => expectation switch
    {
        Always always => Both(always.What, always.While),
        Never never => Both(never.What, never.While),
        Within within => [within.Of, within.Then],
        Recovers recovers => [recovers.Of],
        _ => throw new InvariantBrokenException("every kind of expectation says what it judges"),
    };

    private static IEnumerable<Statement> Both(Statement what, Statement? condition) =>
        condition is null ? [what] : [what, condition];
}
