using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// The common return pipe: it carries at most its capacity, and what comes from above is in it first, so a lower tray drains
/// only into what is left. Why a stack has a capacity: Wyly and Eaton, NBS BMS 132 (1952).
/// </summary>
internal sealed class ReturnStack
{
    private readonly int[] highestFirst;
    private readonly double capacity;

    public ReturnStack(Rack rack)
    {
        capacity = rack.Drain.CapacityLpm / Litres.PerMinutePerM3PerS;
        highestFirst = [.. Enumerable.Range(0, rack.Tiers.Length)
            .OrderByDescending(index => rack.Tiers[index].TrayFloorHeightMm)];
    }

    /// <summary>What a building stack carries, m3/s, filled to a share of its section: q = 27.8 r^(5/3) d^(8/3) in US gallons a
    /// minute and inches (Wyly and Eaton, as printed at scribd.com/document/567525554). Meant for vented stacks of 2 in and up:
    /// at a rack's size it is a first estimate.</summary>
    /// <param name="boreM">Inside diameter, m.</param>
    /// <param name="filledShare">Share of the section filled; plumbing codes stay between 7/24 and 1/3.</param>
    public static double Capacity(double boreM, double filledShare)
    {
        const double InchM = 0.0254;
        const double GallonM3 = 3.785411784e-3;
        return 27.8 * Math.Pow(filledShare, 5.0 / 3) * Math.Pow(boreM / InchM, 8.0 / 3) * GallonM3 / 60;
    }

    /// <summary>Cuts what the trays would drain down to what the stack carries.</summary>
    /// <param name="drains">What each tray would drain, m3/s; on return, what it does.</param>
    public void Share(double[] drains)
    {
        var left = capacity;
        foreach (var tray in highestFirst)
        {
            drains[tray] = Math.Min(drains[tray], left);
            left -= drains[tray];
        }
    }
}
