using System.Collections.Immutable;
using System.Text;
using RackController.Model;

namespace RackController.Control;

/// <summary>The cause-and-effect table: every row that the controller runs from, in the order in which reasons are given.</summary>
public static class CauseAndEffectTable
{
    /// <summary>The rows, most serious first.</summary>
    public static ImmutableArray<CauseAndEffectRow> Rows { get; } =
    [
        SiteRows.ScanFault,
        CurrentRows.RelayWelded,
        CurrentRows.LightStaysOn,
        PumpRows.HighWater,
        PumpRows.LowFloat,
        PumpRows.NoFill,
        ProofRows.FloatsContradict,
        SiteRows.SupplyLost,
        SiteRows.ServiceHold,
        PumpRows.PumpMaximumRun,
        PumpRows.PumpDailyBudget,
        ProofRows.FloatStuck,
        PumpRows.PumpRest,
        PumpRows.NotDrained,
        SiteRows.AirTooHot,
        CurrentRows.CircuitOverLimit,
        CurrentRows.AirDead,
        SiteRows.CircuitShed,
        CurrentRows.LoadDead,
        CurrentRows.LoadCheck,
        CurrentRows.WeldCheck,
        LightRows.LightMissing,
        LightRows.LightUnasked,
        PumpRows.FloodHeld,
        ProofRows.ProofTestFailed,
        PumpRows.FillSlow,
        ProofRows.FloatStill,
        SiteRows.WaterTemperature,
        SiteRows.ReadingUnknown,
        CurrentRows.RelayWorn,
        SiteRows.ClockStepped,
        SiteRows.ClockUntrusted,
        SiteRows.ServiceHoldEnding,
        ProofRows.ProofTestOverdue,
    ];

    /// <summary>Builds every interlock that a site has the sensors for, in the order of the rows.</summary>
    internal static ImmutableArray<Interlock> Build(InterlockSite site) => [.. Rows.SelectMany(row => row.Instances(row, site))];

    /// <summary>The table as a site has it: where each row stands, on what it acts there, and where it is lacking.</summary>
    /// <param name="site">The site, checked.</param>
    public static ImmutableArray<RowAtSite> At(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        var interlocks = new InterlockSite(site, default, []);
        return [.. Rows.Select(row => At(row, interlocks))];
    }

    private static RowAtSite At(CauseAndEffectRow row, InterlockSite at)
    {
        var stands = row.Instances(row, at).Select(interlock => Stand(interlock, at)).ToImmutableArray();
        IEnumerable<string> lacking = row.Scope switch
        {
            RowScope.Rack => at.Site.Racks.Where(rack => stands.All(stand => stand.Rack != rack.Id)).Select(rack => rack.Name),
            RowScope.Circuit => at.Site.Circuits.Where(circuit => stands.All(stand => stand.Circuit != circuit.Id))
                .Select(circuit => circuit.Name),
            _ => [],
        };
        return new RowAtSite(row, stands, [.. lacking]);
    }

    private static RowStand Stand(Interlock interlock, InterlockSite at) => new(
        interlock.Place.Name, interlock.Place.Rack, interlock.Place.Circuit, at.TouchedBy(interlock), interlock.Settings);

    /// <summary>The table as a Markdown document, for people; generated, so that it cannot differ from what runs.</summary>
    public static string ToMarkdown()
    {
        var text = new StringBuilder();
        text.Append("# Cause and effect\n\n");
        text.Append("Generated from the table that the controller runs from. Times are limits of the rack file. An interlock that lacks\n");
        text.Append("its sensor does not exist on that rack. Forbidding always wins over wishing, and no request overrides a row.\n\n");
        text.Append("| row | cause | needs | effect | comes back | alarm: priority, consequence, action |\n");
        text.Append("|---|---|---|---|---|---|\n");
        foreach (var row in Rows)
        {
            var alarm = row.Alarm is { } told
                ? $"{told.Priority.ToString().ToLowerInvariant()}, {told.RespondWithin}: {told.Consequence}; {told.Action}"
                : "none: it acts in the ordinary course of things";
            text.Append($"| `{row.Id}` | {row.Cause} | {row.Needs} | {row.EffectWords} | {row.ComesBack} | {alarm} |\n");
        }

        return text.ToString();
    }
}
