namespace RackController.Model;

/// <summary>Which rack of the site: its place in <see cref="Site.Racks"/>. Not a name, and not valid for another site.</summary>
/// <param name="Index">Position, from 0.</param>
public readonly record struct RackId(int Index);

/// <summary>Which circuit of the site: its place in <see cref="Site.Circuits"/>.</summary>
/// <param name="Index">Position, from 0.</param>
public readonly record struct CircuitId(int Index);

/// <summary>Which load of the site: its place in <see cref="Site.Loads"/>, and in every <see cref="RelayCommands"/>.</summary>
/// <param name="Index">Position, from 0.</param>
public readonly record struct LoadId(int Index);

/// <summary>Which sensor of the site: its place in <see cref="Site.Sensors"/>, and in every <see cref="Readings"/>.</summary>
/// <param name="Index">Position, from 0.</param>
public readonly record struct SensorId(int Index);
