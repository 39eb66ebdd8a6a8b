using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>What a run is driven by, beside what it reads: whoever replays it needs the same, or says what differs.</summary>
/// <param name="RackFileName">The path of its rack file as it was given.</param>
/// <param name="RackFileText">What the file said when it was read.</param>
/// <param name="Program">The version of the program.</param>
/// <param name="Zones">The version of the IANA time zone database that it read clocks by.</param>
/// <param name="Names">What its parts are called.</param>
public sealed record RunFacts(string RackFileName, string RackFileText, string Program, string Zones, PartNames Names);

/// <summary>What the parts of a site are called, in its order. On record a part is only a number; by its name it is found again on
/// another site, or on the same one as a later version of the program counts it.</summary>
/// <param name="Racks">The racks.</param>
/// <param name="Loads">The loads.</param>
/// <param name="Sensors">The sensors.</param>
public sealed record PartNames(ImmutableArray<string> Racks, ImmutableArray<string> Loads, ImmutableArray<string> Sensors)
{
    /// <summary>The names of a site.</summary>
    /// <param name="site">The site.</param>
    public static PartNames Of(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return new PartNames(
            [.. site.Racks.Select(rack => rack.Name)], [.. site.Loads.Select(load => load.Name)],
            [.. site.Sensors.Select(sensor => sensor.Name)]);
    }
}
