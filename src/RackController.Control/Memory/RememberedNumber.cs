namespace RackController.Control;

/// <summary>One number of a memory, as it was written.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Value">The number.</param>
internal readonly record struct RememberedNumber(MemoryName Name, long Value);
