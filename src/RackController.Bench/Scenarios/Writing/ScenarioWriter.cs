using System.Text;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Writes a scenario as a file that reads back as the same scenario, whose run has the same log.</summary>
public static class ScenarioWriter
{
    private static readonly NodaTime.Text.LocalTimePattern TimeOfDay = NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    /// <summary>Writes it.</summary>
    /// <param name="scenario">The scenario. Its times are whole milliseconds and its start a whole minute, as its reader makes
    /// them.</param>
    public static string Write(Scenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        var text = new StringBuilder();
        text.Append($"about: {TextOf.Quoted(scenario.About)}\n");
        text.Append($"rack-file: {TextOf.Quoted(scenario.RackFile)}\n");
        text.Append($"start: {TextOf.Moment(scenario.Site, scenario.Start)}\n");
        text.Append($"length: {TextOf.Length(scenario.Length)}\n");
        text.Append($"breakers: {(scenario.Found.Breakers == BreakerEdge.Slow ? "slow" : "fast")}\n");
        Found(text, scenario.Found);
        Room(text, scenario.Room);
        Events(text, scenario);
        text.Append("expect:\n");
        var statements = new StatementWriter(scenario.Site);
        foreach (var expectation in scenario.Expectations)
        {
            Expectation(text, expectation, statements);
        }

        Accepts(text, scenario);
        return text.ToString();
    }

    private static void Found(StringBuilder text, PlantStart found)
    {
        var usual = PlantStart.Default;
        if (found with { Breakers = usual.Breakers } == usual)
        {
            return;
        }

        text.Append("found:\n");
        text.Append($"  water: {TextOf.Number(found.WaterC)} °C\n");
        text.Append($"  solution: {TextOf.Number(found.ConductivityMsPerCm)} mS/cm\n");
        text.Append($"  top-up: {TextOf.Number(found.TopUpMsPerCm)} mS/cm\n");
        text.Append($"  crop: {Binding.FoundMapping.CropWord(found.CropFactor)}\n");
        text.Append($"  altitude: {TextOf.Number(found.AltitudeM)} m\n");
    }

    private static void Room(StringBuilder text, RoomProfile? room)
    {
        if (room is null)
        {
            return;
        }

        text.Append("room:\n");
        foreach (var point in room.Points)
        {
            text.Append($"  - {{ at: \"{TimeOfDay.Format(point.At)}\", air: {TextOf.Number(point.AirC)} °C, ")
                .Append($"humidity: {TextOf.Number(point.HumidityPercent)} % }}\n");
        }
    }

    private static void Events(StringBuilder text, Scenario scenario)
    {
        var writer = new EventWriter(scenario);
        var lines = string.Concat(scenario.Events.Select(writer.Write));
        text.Append(lines.Length > 0 ? $"events:\n{lines}" : "");
    }

    private static void Expectation(StringBuilder text, Expectation expectation, StatementWriter statements)
    {
        text.Append($"  - that: {TextOf.Quoted(expectation.Name)}\n");
        switch (expectation)
        {
            case Always always:
                text.Append($"    always: {statements.Write(always.What)}\n");
                While(text, always.While, statements);
                break;
            case Never never:
                text.Append($"    never: {statements.Write(never.What)}\n");
                While(text, never.While, statements);
                break;
            case Within within:
                text.Append($"    within: {TextOf.Length(within.Limit)}\n    of: {statements.Write(within.Of)}\n")
                    .Append($"    then: {statements.Write(within.Then)}\n");
                break;
            case Recovers recovers:
                text.Append($"    recovers-within: {TextOf.Length(recovers.Limit)}\n    of: {statements.Write(recovers.Of)}\n");
                break;
            default:
                throw new InvariantBrokenException($"every expectation can be written, {expectation.GetType().Name} too");
        }

        if (expectation.Window.From > Duration.Zero)
        {
            text.Append($"    from: {TextOf.Length(expectation.Window.From)}\n");
        }

        if (expectation.Window.Until < Duration.MaxValue)
        {
            text.Append($"    until: {TextOf.Length(expectation.Window.Until)}\n");
        }
    }

    private static void While(StringBuilder text, Statement? condition, StatementWriter statements) =>
        text.Append(condition is null ? "" : $"    while: {statements.Write(condition)}\n");

    private static void Accepts(StringBuilder text, Scenario scenario)
    {
        if (scenario.Accepts.IsEmpty)
        {
            return;
        }

        text.Append("accepts:\n");
        foreach (var accepted in scenario.Accepts)
        {
            text.Append($"  - hazard: {HazardWords.Key(accepted.Kind)}\n    backstop: {TextOf.Quoted(accepted.Backstop)}\n");
        }
    }
}
