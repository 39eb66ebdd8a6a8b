namespace RackController.Plant;

/// <summary>What of a supply network changes in jumps, if at all.</summary>
/// <param name="Pump">What the pump gives.</param>
/// <param name="ScreenLossK">Minor loss coefficient that a clogged screen adds before the lowest tee.</param>
/// <param name="Viscosity">Kinematic viscosity, m2/s.</param>
internal readonly record struct SupplyConditions(PumpLift Pump, double ScreenLossK, double Viscosity);
