namespace RackController;

/// <summary>Something outside the program keeps it from running. The message is the one line that the person sees:
/// where, what, and what to do.</summary>
internal sealed class CannotRunException(string message) : Exception(message);
