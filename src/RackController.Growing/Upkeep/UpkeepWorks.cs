using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Growing;

/// <summary>The works of upkeep that a rack needs, and what each is called.</summary>
public static class UpkeepWorks
{
    /// <summary>The works of a rack, in the order of their enumeration: floats are wiped only where there are any.</summary>
    /// <param name="site">The site.</param>
    /// <param name="rack">One of its racks.</param>
    public static ImmutableArray<UpkeepWork> Of(Site site, Rack rack)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(rack);
        var hasFloats = rack.FloatCutout is not null || site.Sensors.Any(sensor => sensor.Rack == rack.Id && IsFloat(sensor.Kind));
        return [.. Enum.GetValues<UpkeepWork>().Where(work => work != UpkeepWork.Floats || hasFloats)];
    }

    /// <summary>The work of a key; null where there is none.</summary>
    /// <param name="key">The key, as somebody wrote it.</param>
    public static UpkeepWork? OfKey(string? key) =>
        Enum.GetValues<UpkeepWork>().Where(work => work.Key() == key).Select(work => (UpkeepWork?)work).FirstOrDefault();

    /// <summary>What is done: <c>rinse the screen</c>.</summary>
    /// <param name="work">A work.</param>
    /// <exception cref="InvariantBrokenException">It is none of the works.</exception>
    public static string InWords(this UpkeepWork work) => work switch
    {
        UpkeepWork.Screen => "rinse the screen",
        UpkeepWork.Flush => "flush the pipes",
        UpkeepWork.Reservoir => "change the reservoir's water",
        UpkeepWork.Floats => "wipe the floats",
        UpkeepWork.Standpipes => "clear standpipes and weeps",
        UpkeepWork.Pump => "service the pump",
        _ => throw new InvariantBrokenException($"every work of upkeep has its words, {work} too"),
    };

    /// <summary>What was done, by a key that stands in the book; the key itself where this program knows no such work.</summary>
    /// <param name="key">The key.</param>
    public static string WordsOf(string key) => OfKey(key)?.InWords() ?? key;

    /// <summary>What it is good for and what to do, in a sentence or two (common practice, no source).</summary>
    /// <param name="work">A work.</param>
    /// <exception cref="InvariantBrokenException">It is none of the works.</exception>
    public static string Advice(this UpkeepWork work) => work switch
    {
        UpkeepWork.Screen => "Take the screen off the pump's intake and rinse it until water runs through freely. "
            + "A clogged one starves the top tier first.",
        UpkeepWork.Flush => "Run clean water through riser and branches, and let it out to waste. "
            + "Slime and media settle where water stands between floods.",
        UpkeepWork.Reservoir => "Empty the reservoir, wipe it out and fill it anew. "
            + "Salts drift apart as plants take some and leave others, and topping up does not mend that.",
        UpkeepWork.Floats => "Wipe each float and its stem, and move it by hand to both ends. "
            + "One that sticks tells of water where none is, or of none where there is: its proof test shows whether it works.",
        UpkeepWork.Standpipes => "Pull roots and media out of standpipes and weeps. "
            + "A tray whose weep is shut drowns its roots, and one whose standpipe is shut runs over.",
        UpkeepWork.Pump => "Open the pump, clean impeller and intake, and look at cable and plug. "
            + "One that hums and lifts less is worn.",
        _ => throw new InvariantBrokenException($"every work of upkeep has its advice, {work} too"),
    };

    private static bool IsFloat(SensorKind kind) => kind
        is SensorKind.ReservoirLowFloat or SensorKind.ReservoirFullFloat or SensorKind.TrayFullFloat or SensorKind.TrayHighFloat
        or SensorKind.DripTrayFloat;
}
