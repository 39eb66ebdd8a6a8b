using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Statements as a scenario writes them: <c>{ tier: "north/tier 2", depth: "above 40 mm" }</c>.</summary>
/// <param name="site">The site that gives the names.</param>
internal sealed class StatementWriter(Site site)
{
    /// <summary>Writes one.</summary>
    public string Write(Statement statement) => statement switch
    {
        LoadIsTold told => Of("load", site[told.Load].Name, "is", told.State == SwitchState.On ? "on" : "off"),
        LoadIsPowered powered => Of("load", site[powered.Load].Name, "powered", powered.Powered ? "yes" : "no"),
        FloodIs flood => Of("rack", site[flood.Rack].Name, "flood", flood.Phase.ToString().ToLowerInvariant()),
        AlarmIs alarm => Of("alarm", alarm.Key, "is", alarm.State?.InWords() ?? "active"),
        Reports reports => Of("event", reports.Subject, "what", reports.What),
        Happens happens => $"{{ happens: {TextOf.Quoted(happens.Name)} }}",
        ControllerRuns runs => $"{{ controller: {(runs.Runs ? "running" : "away")} }}",
        Measures measures => Of(measures),
        _ => throw new InvariantBrokenException($"every statement can be written, {statement.GetType().Name} too"),
    };

    private string Of(Measures measures)
    {
        var (subject, name, key) = Place(measures.Measure);
        return Of(subject, name, key, Compared(measures.Compared, ScaleOf(measures.Measure), UnitOf(measures.Measure)));
    }

    private (string Subject, string Name, string Key) Place(Measure measure) => measure switch
    {
        UnbrokenRun run => ("load", site[run.Load].Name, "runs"),
        CircuitCurrent current => ("circuit", site[current.Circuit].Name, "current"),
        Spilled spilled => ("rack", site[spilled.Rack].Name, "spilled"),
        ReservoirVolume volume => ("rack", site[volume.Rack].Name, "reservoir"),
        FloodsOfDay floods => ("rack", site[floods.Rack].Name, "floods"),
        DissolvedOxygen oxygen => ("rack", site[oxygen.Rack].Name, "oxygen"),
        Conductivity conductivity => ("rack", site[conductivity.Rack].Name, "conductivity"),
        WaterTemperature water => ("rack", site[water.Rack].Name, "water"),
        TrayDepth depth => ("tier", Tier(depth.Rack, depth.TierNumber), "depth"),
        AirTemperature air => ("tier", Tier(air.Rack, air.TierNumber), "air"),
        AirHumidity humidity => ("tier", Tier(humidity.Rack, humidity.TierNumber), "humidity"),
        VapourDeficit deficit => ("tier", Tier(deficit.Rack, deficit.TierNumber), "vapour-deficit"),
        LitHoursOfDay lit => ("tier", Tier(lit.Rack, lit.TierNumber), "lit"),
        DailyLightIntegral light => ("tier", Tier(light.Rack, light.TierNumber), "daily-light"),
        _ => throw new InvariantBrokenException($"every measure can be written, {measure.GetType().Name} too"),
    };

    private string Tier(RackId rack, int number) => $"{site[rack].Name}/tier {number}";

    private static string UnitOf(Measure measure) => measure.Unit switch
    {
        "min" or "h" => " s",
        "C" => " °C",
        "mol/m2" => " mol/m2/d",
        "" => "",
        var unit => $" {unit}",
    };

    // Lengths of time are written in the seconds that their reader counts in, so that a third of a minute reads back as that.
    private static double ScaleOf(Measure measure) => measure.Unit switch
    {
        "min" => 60,
        "h" => 3600,
        _ => 1,
    };

    private static string Compared(Comparison comparison, double scale, string unit)
    {
        string Number(double value) => $"{TextOf.Number(scale == 1 ? value : Math.Round(value * scale, 3))}{unit}";
        return comparison switch
        {
            Above above => $"above {Number(above.Limit)}",
            Below below => $"below {Number(below.Limit)}",
            Between { Highest: double.PositiveInfinity } least => $"at least {Number(least.Lowest)}",
            Between { Lowest: double.NegativeInfinity } most => $"at most {Number(most.Highest)}",
            Between exactly when exactly.Lowest == exactly.Highest => $"exactly {Number(exactly.Lowest)}",
            Between between => $"between {Number(between.Lowest)} and {Number(between.Highest)}",
            _ => throw new InvariantBrokenException($"every comparison can be written, {comparison.GetType().Name} too"),
        };
    }

    private static string Of(string subject, string name, string key, string value) =>
        $"{{ {subject}: {TextOf.Quoted(name)}, {key}: {TextOf.Quoted(value)} }}";
}
