namespace RackController.Control;

/// <summary>A run of the controller as it is on record.</summary>
/// <param name="Number">Its number in the journal.</param>
/// <param name="Facts">What it was driven by; null when that is lost.</param>
/// <param name="Bytes">How much room its pages take.</param>
/// <param name="Pages">Its pages in order, for <see cref="RecordedPages.Read"/>; read while they are asked for.</param>
public sealed record RecordedRun(long Number, RunFacts? Facts, long Bytes, IEnumerable<byte[]> Pages);
