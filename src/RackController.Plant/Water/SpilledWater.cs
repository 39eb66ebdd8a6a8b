using RackController.Model;

namespace RackController.Plant;

/// <summary>Where the water lies that a rack has spilled: in its drip tray as far as that holds it, the rest on the floor, until
/// somebody mops up both. Nothing of it evaporates, so that it stays seen; an assumption of ours.</summary>
/// <param name="tray">The drip tray; null for none.</param>
internal sealed class SpilledWater(DripTray? tray)
{
    private readonly double capacityM3 = (tray?.CapacityL ?? 0) / Litres.PerM3;
    private readonly double depthM = (tray?.DepthMm ?? 0) / 1000;
    private double moppedFromFloorM3;

    /// <summary>Of all that was ever spilled, what was mopped up, m3.</summary>
    public double MoppedM3 { get; private set; }

    /// <summary>Of all that was ever spilled, what has not run onto the floor while the drip tray is full, m3.</summary>
    public double KeptFromFloorM3 => MoppedM3 + capacityM3 - moppedFromFloorM3;

    /// <summary>Water in the drip tray, m3.</summary>
    /// <param name="spilledM3">All that was ever spilled.</param>
    public double InTrayM3(double spilledM3) => Math.Min(spilledM3 - MoppedM3, capacityM3);

    /// <summary>Depth of water in the drip tray, m; 0 without one.</summary>
    /// <param name="spilledM3">All that was ever spilled.</param>
    public double DepthM(double spilledM3) => capacityM3 > 0 ? InTrayM3(spilledM3) / capacityM3 * depthM : 0;

    /// <summary>Water in the drip tray when it stands at a depth, m3; without one it never does.</summary>
    /// <param name="atM">Depth, m.</param>
    public double TrayVolumeM3(double atM) => depthM > 0 ? capacityM3 * atM / depthM : double.PositiveInfinity;

    /// <summary>Water on the floor, m3.</summary>
    /// <param name="spilledM3">All that was ever spilled.</param>
    public double OnFloorM3(double spilledM3) => Math.Max(0, spilledM3 - MoppedM3 - capacityM3);

    /// <summary>All that ever ran onto the floor, m3.</summary>
    /// <param name="spilledM3">All that was ever spilled.</param>
    public double OntoFloorM3(double spilledM3) => moppedFromFloorM3 + OnFloorM3(spilledM3);

    /// <summary>Somebody mops up all of it.</summary>
    /// <param name="spilledM3">All that was ever spilled.</param>
    public void Mop(double spilledM3)
    {
        moppedFromFloorM3 = OntoFloorM3(spilledM3);
        MoppedM3 = spilledM3;
    }
}
