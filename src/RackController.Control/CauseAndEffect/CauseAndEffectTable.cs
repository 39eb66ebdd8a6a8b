using System.Collections.Immutable;

namespace RackController.Control;

/// <summary>The cause-and-effect table: every row that the controller runs from, in the order in which reasons are given.</summary>
public static class CauseAndEffectTable
{
    /// <summary>The rows, most serious first.</summary>
    public static ImmutableArray<CauseAndEffectRow> Rows { get; } =
    [
        SiteRows.ScanFault,
        PumpRows.HighWater,
        PumpRows.LowFloat,
        SiteRows.SupplyLost,
        SiteRows.ServiceHold,
        PumpRows.PumpMaximumRun,
        PumpRows.PumpDailyBudget,
        PumpRows.PumpRest,
        SiteRows.AirTooHot,
        SiteRows.CircuitShed,
        PumpRows.FloodHeld,
        PumpRows.FillSlow,
        SiteRows.WaterTemperature,
        SiteRows.ReadingUnknown,
        SiteRows.ClockUntrusted,
        SiteRows.ServiceHoldEnding,
    ];

    /// <summary>Builds every interlock that a site has the sensors for, in the order of the rows.</summary>
    internal static ImmutableArray<Interlock> Build(InterlockSite site) => [.. Rows.SelectMany(row => row.Instances(row, site))];
}
