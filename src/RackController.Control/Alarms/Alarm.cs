using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>The states of an alarm, exactly those of ISA-18.2 / IEC 62682.</summary>
public enum AlarmState
{
    /// <summary>The condition is absent and nothing is owed.</summary>
    Normal,

    /// <summary>The condition is present and nobody has seen it.</summary>
    Unacknowledged,

    /// <summary>The condition is present and somebody has seen it.</summary>
    Acknowledged,

    /// <summary>The condition went away before anybody saw it.</summary>
    ReturnedUnacknowledged,

    /// <summary>The condition went away, but the alarm stays until it is reset.</summary>
    Latched,

    /// <summary>Taken out of sight by a person for a limited time.</summary>
    Shelved,

    /// <summary>Out of sight because it means nothing in the rack's present state.</summary>
    SuppressedByDesign,

    /// <summary>Taken out of sight for maintenance, until it is put back.</summary>
    OutOfService,
}

/// <summary>One alarm as a person sees it: what is wrong, what follows, what to do, and how soon.</summary>
/// <param name="Key">Unique on the site and stable across versions: <c>north/low-float</c>.</param>
/// <param name="Priority">How urgent.</param>
/// <param name="State">Its state now.</param>
/// <param name="Since">When it came into that state.</param>
/// <param name="Cause">What is wrong.</param>
/// <param name="Consequence">What follows if nobody acts.</param>
/// <param name="Action">What to do.</param>
/// <param name="RespondWithin">How soon, in words.</param>
public sealed record Alarm(
    string Key, AlarmPriority Priority, AlarmState State, Moment Since,
    string Cause, string Consequence, string Action, string RespondWithin)
{
    /// <summary>When it comes into sight again by itself, by the wall clock as it hangs now; null unless it is shelved.</summary>
    public Instant? ShelvedUntil { get; init; }
}
