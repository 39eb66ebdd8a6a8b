using NodaTime;

namespace RackController.Control;

/// <summary>Something that the schedule will do next, if nothing gets in its way.</summary>
/// <param name="Subject">The load or rack.</param>
/// <param name="What">What will happen: <c>on</c>, <c>off</c>, <c>flood</c>.</param>
/// <param name="At">When, by the wall clock.</param>
public sealed record DueNext(string Subject, string What, Instant At);
