using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// What a person asks of the controller. A request is a demand: it never overrides an interlock, and every one is
/// answered by an event that says what became of it.
/// </summary>
/// <param name="By">Who asks, for the record.</param>
public abstract record OperatorRequest(string By);

/// <summary>Flood once, now, outside the schedule.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Rack">Which rack.</param>
public sealed record FloodNow(string By, RackId Rack) : OperatorRequest(By);

/// <summary>Put every load of a rack in its safe state until somebody resumes. Always allowed, to anyone.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Rack">Which rack; null for all of them.</param>
public sealed record Stop(string By, RackId? Rack) : OperatorRequest(By);

/// <summary>Follow the schedule again after a stop.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Rack">Which rack; null for all of them.</param>
public sealed record Resume(string By, RackId? Rack) : OperatorRequest(By);

/// <summary>Leave out the next scheduled flood; asking twice leaves out one, not two.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Rack">Which rack.</param>
public sealed record SkipNextFlood(string By, RackId Rack) : OperatorRequest(By);

/// <summary>Hands are in the rack: the pump may not start and the valves are closed, for a limited time.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Rack">Which rack.</param>
/// <param name="Length">How long; cut to the rack's longest service hold, and the event says so.</param>
public sealed record HoldForService(string By, RackId Rack, Duration Length) : OperatorRequest(By);

/// <summary>Hands are out of the rack again.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Rack">Which rack.</param>
public sealed record EndServiceHold(string By, RackId Rack) : OperatorRequest(By);

/// <summary>An alarm was seen and understood.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Alarm">The key of the alarm, as in <see cref="Alarm.Key"/>.</param>
public sealed record Acknowledge(string By, string Alarm) : OperatorRequest(By);

/// <summary>Take an alarm out of sight for a while; its interlock goes on.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Alarm">The key of the alarm.</param>
/// <param name="Length">For how long; cut to 24 h, and the event says so.</param>
public sealed record Shelve(string By, string Alarm, Duration Length) : OperatorRequest(By);

/// <summary>Bring a shelved alarm into sight again before its time.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Alarm">The key of the alarm.</param>
public sealed record Unshelve(string By, string Alarm) : OperatorRequest(By);

/// <summary>Take an alarm out of service for maintenance, or put it back; its interlock goes on.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Alarm">The key of the alarm.</param>
/// <param name="OutOfService">Out of service or back.</param>
public sealed record SetAlarmOutOfService(string By, string Alarm, bool OutOfService) : OperatorRequest(By);

/// <summary>First of the two actions that release a latch: names the latch.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Latch">The key of the latched alarm.</param>
public sealed record ResetLatch(string By, string Latch) : OperatorRequest(By);

/// <summary>Second of the two actions that release a latch: confirms the first within its time.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Latch">The key of the latched alarm.</param>
public sealed record ConfirmReset(string By, string Latch) : OperatorRequest(By);

/// <summary>Begin the proof test of a sensor or relay; one at a time on a site.</summary>
/// <param name="By">Who does it.</param>
/// <param name="Item">The name of the sensor or load, as in <see cref="ProofTestStatus.Item"/>.</param>
public sealed record BeginProofTest(string By, string Item) : OperatorRequest(By);

/// <summary>Say what was seen, where the step of a proof test asks a person.</summary>
/// <param name="By">Who saw it.</param>
/// <param name="AsExpected">Whether it was as the step says.</param>
public sealed record AnswerProofTest(string By, bool AsExpected) : OperatorRequest(By);

/// <summary>End the proof test that is under way; it counts for nothing.</summary>
/// <param name="By">Who asks.</param>
public sealed record AbandonProofTest(string By) : OperatorRequest(By);

/// <summary>Take a tier into or out of use: out of use it has neither light nor water.</summary>
/// <param name="By">Who asks.</param>
/// <param name="Rack">Which rack.</param>
/// <param name="TierNumber">Which tier, 1 at the bottom.</param>
/// <param name="InUse">Into use or out of it.</param>
public sealed record SetTierInUse(string By, RackId Rack, int TierNumber, bool InUse) : OperatorRequest(By);
