using NodaTime;

namespace RackController.Control;

/// <summary>Where the proof test of one sensor or relay stands.</summary>
/// <param name="Item">The name of the sensor or load, which names the test too.</param>
/// <param name="Kind">What sort of test it is.</param>
/// <param name="Interval">How often it is due.</param>
/// <param name="PassedAt">When it was last passed, by the calendar; null when it never was.</param>
/// <param name="DueAt">When it is due, by the calendar.</param>
/// <param name="IsOverdue">Whether that has passed.</param>
/// <param name="HasFailed">Whether it failed and has not been passed since.</param>
public sealed record ProofTestStatus(
    string Item, ProofTestKind Kind, Duration Interval, Instant? PassedAt, Instant DueAt, bool IsOverdue, bool HasFailed);

/// <summary>The proof test that is under way, as the person who does it sees it.</summary>
/// <param name="Item">The name of the sensor or load.</param>
/// <param name="Step">Which step, from 1.</param>
/// <param name="Steps">Of how many.</param>
/// <param name="Words">What to do, or what to look at.</param>
/// <param name="AsksPerson">Whether somebody must say what was seen; otherwise the readings do.</param>
/// <param name="WaitsForRack">Whether the rack is not yet as the step needs it.</param>
/// <param name="Left">How long until the step, or the wait, is over.</param>
public sealed record ProofTestProgress(
    string Item, int Step, int Steps, string Words, bool AsksPerson, bool WaitsForRack, Duration Left);
