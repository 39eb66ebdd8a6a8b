using NodaTime;
using RackController.Control;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Something that a scenario does to its run.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it; expectations can refer to it.</param>
public abstract record ScenarioEvent(Duration At, string Name);

/// <summary>A person asks the controller for something.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it.</param>
/// <param name="Request">The request.</param>
public sealed record PersonAsks(Duration At, string Name, OperatorRequest Request) : ScenarioEvent(At, Name);

/// <summary>The board's wall clock is moved.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it.</param>
/// <param name="By">By how much; negative is back.</param>
public sealed record ClockSteps(Duration At, string Name, Duration By) : ScenarioEvent(At, Name);

/// <summary>The board's wall clock is set right and vouched for, as when network time comes back.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it.</param>
public sealed record ClockSetRight(Duration At, string Name) : ScenarioEvent(At, Name);

/// <summary>Nothing vouches for the board's wall clock any more; it goes on as it was.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it.</param>
public sealed record ClockLosesTrust(Duration At, string Name) : ScenarioEvent(At, Name);

/// <summary>The board loses its power: coils fall to rest, and what was remembered is all that is left.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it.</param>
public sealed record ControllerGoes(Duration At, string Name) : ScenarioEvent(At, Name);

/// <summary>The board boots again and restores what it remembered.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it.</param>
/// <param name="Wall">What its wall clock says without anything to vouch for it; null when the clock is right and
/// trusted.</param>
public sealed record ControllerComes(Duration At, string Name, Instant? Wall) : ScenarioEvent(At, Name);

/// <summary>Something goes wrong on the rack.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it.</param>
/// <param name="Fault">What goes wrong; the simulated rack keeps its times.</param>
public sealed record RackFails(Duration At, string Name, Fault Fault) : ScenarioEvent(At, Name);

/// <summary>A fault of the rack ends.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it.</param>
public sealed record RackMends(Duration At, string Name) : ScenarioEvent(At, Name);

/// <summary>The air of the room changes.</summary>
/// <param name="At">When, since the run began.</param>
/// <param name="Name">What the scenario calls it.</param>
/// <param name="AirC">Its temperature from now on, degrees Celsius.</param>
/// <param name="HumidityPercent">Its relative humidity from now on, %.</param>
public sealed record RoomChanges(Duration At, string Name, double AirC, double HumidityPercent) : ScenarioEvent(At, Name);
