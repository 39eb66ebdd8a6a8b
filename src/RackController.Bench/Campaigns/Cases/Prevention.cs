using System.Collections.Immutable;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>A hazard that only a wired part kept off.</summary>
/// <param name="By">The part.</param>
/// <param name="Otherwise">What happens when the same failures strike the same site without it.</param>
public sealed record Prevention(WiredBackstop By, Hazard Otherwise)
{
    /// <summary>The parts that the bench can take away to see; a circuit without a breaker is none.</summary>
    internal static readonly ImmutableArray<WiredBackstop> Removable = [WiredBackstop.FloatCutout, WiredBackstop.TimeCutout];

    /// <summary>A site without a part.</summary>
    internal static Site Without(WiredBackstop part, Site site) => site with
    {
        Racks =
        [
            .. site.Racks.Select(rack => part == WiredBackstop.FloatCutout
                ? rack with { FloatCutout = null }
                : rack with { TimeCutout = null }),
        ],
    };

    /// <summary>Whether a mode is one of the part itself, and so has no place where that is not.</summary>
    internal static bool IsOf(WiredBackstop part, FaultMode mode) => mode.Kinds.Any(kind => part == WiredBackstop.FloatCutout
        ? kind is FaultKind.FloatCutoutStuck or FaultKind.FloatCutoutUnlatched
        : kind is FaultKind.TimeCutoutStuck or FaultKind.TimeCutoutTurned);
}
