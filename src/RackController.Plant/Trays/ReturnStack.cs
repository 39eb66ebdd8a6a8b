using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// The common return pipe: it carries at most its capacity, and what comes from above is in it first, so a lower tray drains
/// only into what is left. Why a stack has a capacity: Wyly and Eaton, NBS BMS 132 (1952), from memory; the rack
/// file says how much.
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

    /// <summary>Cuts what the trays would drain down to what the stack carries.</summary>
    /// <param name="drains">What each tray would drain, m3/s; on return, what it does.</param>
    /// <param name="openShare">Share of the stack that is open: it carries so much less.</param>
    public void Share(double[] drains, double openShare)
    {
        var left = capacity * openShare;
        foreach (var tray in highestFirst)
        {
            drains[tray] = Math.Min(drains[tray], left);
            left -= drains[tray];
        }
    }
}
