using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>A level of the simulated rack whose passing somebody who judges or records a run must not miss.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="Quantity">Of what.</param>
/// <param name="TierNumber">The tier, 1 at the bottom; null for the whole rack.</param>
/// <param name="Level">The level, in the unit of the quantity.</param>
public readonly record struct WatchedLevel(RackId Rack, RackQuantity Quantity, int? TierNumber, double Level);
