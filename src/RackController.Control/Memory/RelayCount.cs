using RackController.Model;

namespace RackController.Control;

/// <summary>How often relays have switched, as the controller remembers it from run to run.</summary>
public static class RelayCount
{
    /// <summary>How the name of a remembered count ends.</summary>
    internal const string Name = "/operations";

    /// <summary>How often a relay has switched on since it was new, as far as that was remembered.</summary>
    /// <param name="load">The load that it switches.</param>
    /// <param name="memory">What the controller remembers; null for nothing.</param>
    public static long Of(Load load, ControlMemory? memory)
    {
        ArgumentNullException.ThrowIfNull(load);
        return memory?.Items.GetValueOrDefault(KeyOf($"{load.Name}/{CurrentRows.RelayWorn.Id}")) is > 0 and var count ? count : 0;
    }

    /// <summary>Under which name the count of a relay is remembered.</summary>
    /// <param name="interlock">The key of the row that counts it.</param>
    internal static string KeyOf(string interlock) => interlock + Name;
}
