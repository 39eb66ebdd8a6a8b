namespace RackController.Plant;

/// <summary>What may be said of one kind of fault.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Place">What it happens to.</param>
/// <param name="SizeUnit">Unit of its size; empty when it has none and the size must be 0.</param>
/// <param name="SizeMin">Smallest size.</param>
/// <param name="SizeMax">Largest size.</param>
/// <param name="SizeMeans">What the size says, for people.</param>
public sealed record FaultEntry(
    FaultKind Kind, FaultPlace Place, string SizeUnit, double SizeMin, double SizeMax, string SizeMeans);
