using NodaTime;

namespace RackController.Model;

/// <summary>How a fan or aerator runs.</summary>
/// <param name="Load">The load.</param>
public abstract record RunPlan(LoadId Load);

/// <summary>Always on.</summary>
/// <param name="Load">The load.</param>
public sealed record RunAlways(LoadId Load) : RunPlan(Load);

/// <summary>On for a while, off for a while, by the monotonic clock, beginning with on.</summary>
/// <param name="Load">The load.</param>
/// <param name="On">How long on: 1 s to 24 h.</param>
/// <param name="Off">How long off: 1 s to 24 h.</param>
public sealed record RunInCycles(LoadId Load, Duration On, Duration Off) : RunPlan(Load);

/// <summary>On above one value of a sensor, off below another, unchanged between. While the sensor's word is unknown the
/// load is in its safe state.</summary>
/// <param name="Load">The load.</param>
/// <param name="Sensor">An air temperature or humidity sensor.</param>
/// <param name="OnAbove">In the sensor's unit; above <paramref name="OffBelow"/>.</param>
/// <param name="OffBelow">In the sensor's unit.</param>
public sealed record RunByReading(LoadId Load, SensorId Sensor, double OnAbove, double OffBelow) : RunPlan(Load);
