namespace RackController.Control;

/// <summary>How one load came to its command at the last scan: kept as numbers, put into words only when somebody asks.</summary>
/// <param name="Demand">What was wanted.</param>
/// <param name="Forbidder">The first interlock that forbids it to be on, by place in the table; null for none.</param>
/// <param name="SafeStater">The first interlock that puts it in its safe state; null for none.</param>
internal readonly record struct Decision(Demand Demand, int? Forbidder, int? SafeStater);
