using NodaTime;

namespace RackController.Growing;

/// <summary>How much a rack was used since a work of upkeep was last done.</summary>
/// <param name="Since">Since when.</param>
/// <param name="WasDone">Whether the work was done then; else that is when the record begins, and nobody ever put it down as done.</param>
/// <param name="Floods">How many floods began, from 0.</param>
/// <param name="PumpOn">How long the pump ran in all, from 0.</param>
public sealed record UpkeepUse(Instant Since, bool WasDone, int Floods, Duration PumpOn);
