using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>What is asked of several sensors at once.</summary>
internal static class FactsOfSeveral
{
    /// <summary>Whether any of these contacts is known to read 0.</summary>
    public static bool AnyIsOpen(this Facts facts, ImmutableArray<Sensor> sensors)
    {
        foreach (var sensor in sensors)
        {
            if (facts.IsOpen(sensor.Id))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether all of these sensors may be believed.</summary>
    public static bool AllAreKnown(this Facts facts, ImmutableArray<Sensor> sensors)
    {
        foreach (var sensor in sensors)
        {
            if (!facts.IsKnown(sensor.Id))
            {
                return false;
            }
        }

        return true;
    }
}
