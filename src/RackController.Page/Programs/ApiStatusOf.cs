using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Turns a picture of a site into what a program reads. Numbers carry their unit in their name; times are ISO 8601 in UTC;
/// what is null is not known, or is not so.</summary>
internal static class ApiStatusOf
{
    /// <summary>Makes it.</summary>
    public static JsonObject Picture(Site site, SiteStatus status) => new()
    {
        ["site"] = site.Name,
        ["at"] = Time(status.At.Wall),
        ["isWallTrusted"] = status.At.WallTrusted,
        ["scanFault"] = status.Health.Fault,
        ["scans"] = status.Health.Scans,
        ["lateScans"] = status.Health.Slips,
        ["racks"] = new JsonArray([.. site.Racks.Select(rack => Rack(rack, status))]),
        ["circuits"] = new JsonArray([.. site.Circuits.Select(circuit => Circuit(CircuitLoad.Of(site, circuit, status)))]),
        ["loads"] = new JsonArray([.. status.Loads.Select(load => Load(site, load))]),
        ["readings"] = new JsonArray([.. status.Sensors.Select(Reading)]),
        ["alarms"] = new JsonArray([.. status.Alarms.Select(Alarm)]),
        ["due"] = new JsonArray([.. status.Due.Select(Due)]),
        ["proofTests"] = new JsonArray([.. status.ProofTests.Select(Test)]),
        ["proofTest"] = status.ProofTest is { } test ? Step(test) : null,
    };

    /// <summary>Turns an event into what a program reads.</summary>
    public static JsonObject Event(ControlEvent happened) => new()
    {
        ["at"] = Time(happened.At.Wall),
        ["kind"] = happened.Kind.ToString(),
        ["subject"] = happened.Subject,
        ["what"] = happened.What,
        ["because"] = happened.Because,
    };

    /// <summary>A time as programs read it.</summary>
    public static string Time(Instant at) => InstantPattern.ExtendedIso.Format(at);

    /// <summary>A time that there need not be.</summary>
    public static string? Time(Instant? at) => at is { } known ? Time(known) : null;

    private static JsonObject Rack(Rack rack, SiteStatus status)
    {
        var asked = status.Asked[rack.Id.Index];
        var inUse = status.TiersInUse[rack.Id.Index];
        return new JsonObject
        {
            ["name"] = rack.Name,
            ["phase"] = Word(status.Floods[rack.Id.Index]),
            ["isStopped"] = asked.IsStopped,
            ["holdLeftS"] = asked.HoldLeft?.TotalSeconds,
            ["skipsNextFlood"] = asked.SkipsNextFlood,
            ["tiersInUse"] = new JsonArray([.. rack.Tiers.Select(tier => tier.Number).Where(number => inUse[number - 1])]),
        };
    }

    private static JsonObject Circuit(CircuitLoad load) => new()
    {
        ["name"] = load.Circuit.Name,
        ["currentA"] = load.CurrentA,
        ["limitA"] = load.Circuit.ContinuousLimitA,
        ["isMeasured"] = load.IsMeasured,
    };

    private static JsonObject Load(Site site, LoadWhy why) => new()
    {
        ["name"] = site[why.Load].Name,
        ["kind"] = Word(site[why.Load].Kind),
        ["isOn"] = why.State == SwitchState.On,
        ["why"] = why.Summary,
        ["wanted"] = why.Demand,
        ["interlocks"] = new JsonArray([.. why.Interlocks]),
        ["circuit"] = why.Admission,
    };

    // What may not be believed is not shown. A contact says 0 or 1, without a unit.
    private static JsonObject Reading(SensorStatus status) => new()
    {
        ["name"] = status.Sensor.Name,
        ["kind"] = Word(status.Sensor.Kind),
        ["value"] = status.Doubt is null ? status.Reading.Value : null,
        ["unit"] = ReadingWords.Unit(status.Sensor.Kind),
        ["doubt"] = status.Doubt,
        ["ageS"] = Math.Round(status.Age.TotalSeconds, 1),
    };

    private static JsonObject Alarm(Alarm alarm) => new()
    {
        ["key"] = alarm.Key,
        ["priority"] = Word(alarm.Priority),
        ["state"] = alarm.State.InWords(),
        ["since"] = Time(alarm.Since.Wall),
        ["cause"] = alarm.Cause,
        ["consequence"] = alarm.Consequence,
        ["action"] = alarm.Action,
        ["respondWithin"] = alarm.RespondWithin,
        ["shelvedUntil"] = Time(alarm.ShelvedUntil),
    };

    private static JsonObject Due(DueNext due) => new()
    {
        ["at"] = Time(due.At),
        ["subject"] = due.Subject,
        ["what"] = due.What,
    };

    private static JsonObject Test(ProofTestStatus test) => new()
    {
        ["item"] = test.Item,
        ["kind"] = Word(test.Kind),
        ["passedAt"] = Time(test.PassedAt),
        ["dueAt"] = Time(test.DueAt),
        ["isOverdue"] = test.IsOverdue,
        ["hasFailed"] = test.HasFailed,
    };

    private static JsonObject Step(ProofTestProgress test) => new()
    {
        ["item"] = test.Item,
        ["step"] = test.Step,
        ["steps"] = test.Steps,
        ["words"] = test.Words,
        ["asksNow"] = test is { AsksPerson: true, WaitsForRack: false },
        ["waitsForRack"] = test.WaitsForRack,
        ["leftS"] = test.Left.TotalSeconds,
    };

    // The names of our enumerations are the words of the trade, which is what programs read: `PumpFlow` is `pump-flow`.
    private static string Word(Enum word)
    {
        var letters = word.ToString().Select((letter, at) => char.IsUpper(letter) && at > 0 ? $"-{letter}" : $"{letter}");
        return string.Concat(letters).ToLowerInvariant();
    }
}
