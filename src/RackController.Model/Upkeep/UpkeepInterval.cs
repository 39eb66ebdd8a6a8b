using NodaTime;

namespace RackController.Model;

/// <summary>How long a work of upkeep may wait after it was done: what comes first makes it due.</summary>
/// <param name="Floods">After so many floods of the rack: 1 to 100 000; null where floods do not count.</param>
/// <param name="Days">After so many days: 1 to 3650; null where days do not count.</param>
/// <param name="PumpOn">After the pump ran for so long in all: 1 h to 100 000 h; null where that does not count.</param>
public sealed record UpkeepInterval(int? Floods, int? Days, Duration? PumpOn)
{
    /// <summary>The most floods that can be meant.</summary>
    public const int MostFloods = 100_000;

    /// <summary>The most days that can be meant: ten years.</summary>
    public const int MostDays = 3650;

    /// <summary>The most hours of the pump that can be meant: as long as no pump lasts.</summary>
    public const int MostPumpHours = 100_000;
}

/// <summary>What a rack file says of one work of upkeep, in place of what its media suggests.</summary>
/// <param name="Work">The work.</param>
/// <param name="Every">How long it may wait; null where it is never to be asked for.</param>
public sealed record UpkeepRule(UpkeepWork Work, UpkeepInterval? Every);
