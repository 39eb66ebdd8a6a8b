using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>
/// Looks for what no single key can show: values that are sound each and do not fit each other. Every check works with
/// whatever parts are sound, so that one mistake never hides another.
/// </summary>
internal static class SiteChecks
{
    /// <summary>Runs all checks.</summary>
    /// <param name="site">The file as written.</param>
    /// <param name="complaints">Where to say what does not fit.</param>
    public static void Run(SitePart site, Complaints complaints)
    {
        NameChecks.Run(site, complaints);
        LineChecks.Run(site, complaints);
        CircuitChecks.Run(site, complaints);
        foreach (var rack in site.Racks)
        {
            TierChecks.Run(rack, complaints);
            TrayChecks.Run(rack, complaints);
            WaterChecks.Run(rack, complaints);
            SpillChecks.Run(rack, complaints);
            TimeCutoutChecks.Run(rack, complaints);
            FloodChecks.Run(rack, complaints);
            RunChecks.Run(rack, complaints);
            SafeStateChecks.Run(rack, complaints);
            LimitChecks.Run(rack, site.Scan, complaints);
            ProtectionChecks.Run(rack, complaints);
            MeasuredChecks.Run(rack, complaints);
            ForBatchesChecks.Run(rack, complaints);
        }
    }
}
