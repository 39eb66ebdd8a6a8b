using System.Text;
using NodaTime;
using RackController.Bench.Binding;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Events as a scenario writes them.</summary>
/// <param name="scenario">The scenario.</param>
internal sealed class EventWriter(Scenario scenario)
{
    private readonly Site site = scenario.Site;

    /// <summary>Writes one; nothing for what its beginning says already, such as the end of a fault.</summary>
    public string Write(ScenarioEvent happening)
    {
        var text = new StringBuilder();
        text.Append($"  - at: {TextOf.Length(happening.At)}\n    name: {TextOf.Quoted(happening.Name)}\n");
        return happening switch
        {
            RackMends or ControllerComes => "",
            RackFails fails => Fault(text, fails.Fault),
            PersonAsks asks => Request(text, asks.Request),
            ClockSteps steps => Line(
                text, "clock", $"{(steps.By < Duration.Zero ? "back" : "ahead")} {TextOf.Length(Magnitude(steps.By))}"),
            ClockSetRight => Line(text, "clock", "right"),
            ClockLosesTrust => Line(text, "clock", "untrusted"),
            ControllerGoes goes => Away(text, goes),
            RoomChanges room => Line(
                text.Append($"    humidity: {TextOf.Number(room.HumidityPercent)} %\n"), "room", $"{TextOf.Number(room.AirC)} °C"),
            _ => throw new InvariantBrokenException($"every event can be written, {happening.GetType().Name} too"),
        };
    }

    private static string Line(StringBuilder text, string key, string value) => text.Append($"    {key}: {value}\n").ToString();

    private static Duration Magnitude(Duration by) => by < Duration.Zero ? -by : by;

    private string Fault(StringBuilder text, Fault fault)
    {
        var entry = FaultCatalogue.Entry(fault.Kind);
        text.Append($"    fault: {FaultNames.Of(fault.Kind)}\n");
        if (PlaceKey(entry.Place) is { } key)
        {
            text.Append($"    {key}: {TextOf.Quoted(FaultNames.Where(site, fault))}\n");
        }

        if (entry.SizeUnit.Length > 0)
        {
            var unit = entry.SizeUnit is "s" or "L" or "mA" or "L/min" ? $" {entry.SizeUnit}" : "";
            text.Append($"    size: {TextOf.Number(fault.Size)}{unit}\n");
        }

        return fault.Until == MonotonicTime.Never ? text.ToString() : Line(text, "for", TextOf.Length(fault.Until - fault.From));
    }

    private static string? PlaceKey(FaultPlace place) => place switch
    {
        FaultPlace.Site => null,
        FaultPlace.Rack or FaultPlace.FloatCutout or FaultPlace.TimeCutout => "rack",
        FaultPlace.Tier => "tier",
        FaultPlace.Circuit => "circuit",
        FaultPlace.Load or FaultPlace.Motor or FaultPlace.Valve => "load",
        FaultPlace.Contact or FaultPlace.MeasuringSensor or FaultPlace.Sensor => "sensor",
        _ => throw new InvariantBrokenException($"every place of a fault has its key, {place} too"),
    };

    private string Away(StringBuilder text, ControllerGoes goes)
    {
        text.Append("    controller: off\n");
        if (scenario.Events.OfType<ControllerComes>().FirstOrDefault(comes => comes.At >= goes.At) is not { } back)
        {
            return text.ToString();
        }

        if (back.Wall is { } wall)
        {
            text.Append($"    wakes: {TextOf.Moment(site, wall)}\n");
        }

        return Line(text, "for", TextOf.Length(back.At - goes.At));
    }

    private string Request(StringBuilder text, OperatorRequest request)
    {
        text.Append($"    ask: {RequestMaker.Word(RequestMaker.KindOf(request))}\n    person: {TextOf.Quoted(request.By)}\n");
        return request switch
        {
            FloodNow ask => Rack(text, ask.Rack),
            Stop { Rack: { } rack } => Rack(text, rack),
            Resume { Rack: { } rack } => Rack(text, rack),
            SkipNextFlood ask => Rack(text, ask.Rack),
            HoldForService ask => Rack(text.Append($"    for: {TextOf.Length(ask.Length)}\n"), ask.Rack),
            EndServiceHold ask => Rack(text, ask.Rack),
            Acknowledge ask => Alarm(text, ask.Alarm),
            Shelve ask => Alarm(text.Append($"    for: {TextOf.Length(ask.Length)}\n"), ask.Alarm),
            Unshelve ask => Alarm(text, ask.Alarm),
            SetAlarmOutOfService ask => Alarm(text, ask.Alarm),
            ResetLatch ask => Alarm(text, ask.Latch),
            ConfirmReset ask => Alarm(text, ask.Latch),
            SetTierInUse ask => Line(text, "tier", TextOf.Quoted($"{site[ask.Rack].Name}/tier {ask.TierNumber}")),
            BeginProofTest ask => Line(text, IsSensor(ask.Item) ? "sensor" : "load", TextOf.Quoted(ask.Item)),
            _ => text.ToString(),
        };
    }

    private bool IsSensor(string item) => site.Sensors.Any(sensor => sensor.Name == item);

    private string Rack(StringBuilder text, RackId rack) => Line(text, "rack", TextOf.Quoted(site[rack].Name));

    private static string Alarm(StringBuilder text, string key) => Line(text, "alarm", TextOf.Quoted(key));
}
