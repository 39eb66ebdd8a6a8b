using NodaTime;
using NodaTime.Text;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Turns a picture of a site into what a program reads.</summary>
internal static class ApiStatusOf
{
    /// <summary>Makes it.</summary>
    public static ApiStatus Picture(Site site, SiteStatus status) => new(
        site.Name, Time(status.At.Wall), status.At.WallTrusted, status.Health.Fault, status.Health.Scans, status.Health.Slips,
        [.. site.Racks.Select(rack => Rack(rack, status))],
        [.. site.Circuits.Select(circuit => Circuit(CircuitLoad.Of(site, circuit, status)))],
        [.. status.Loads.Select(load => Load(site, load))],
        [.. status.Sensors.Select(Reading)],
        [.. status.Alarms.Select(Alarm)],
        [.. status.Due.Select(due => new ApiDue(Time(due.At), due.Subject, due.What))],
        [.. status.ProofTests.Select(Test)], status.ProofTest is { } test ? Step(test) : null);

    /// <summary>Turns an event into what a program reads.</summary>
    public static ApiEvent Event(ControlEvent happened) => new(
        Time(happened.At.Wall), happened.Kind.ToString(), happened.Subject, happened.What, happened.Because);

    /// <summary>A time as programs read it.</summary>
    public static string Time(Instant at) => InstantPattern.ExtendedIso.Format(at);

    private static ApiRack Rack(Rack rack, SiteStatus status)
    {
        var asked = status.Asked[rack.Id.Index];
        var inUse = status.TiersInUse[rack.Id.Index];
        return new ApiRack(
            rack.Name, Word(status.Floods[rack.Id.Index]), asked.IsStopped, asked.HoldLeft?.TotalSeconds, asked.SkipsNextFlood,
            [.. rack.Tiers.Select(tier => tier.Number).Where(number => inUse[number - 1])]);
    }

    private static ApiCircuit Circuit(CircuitLoad load) => new(
        load.Circuit.Name, load.CurrentA, load.Circuit.ContinuousLimitA, load.IsMeasured);

    private static ApiLoad Load(Site site, LoadWhy why) => new(
        site[why.Load].Name, Word(site[why.Load].Kind), why.State == SwitchState.On, why.Summary, why.Demand, why.Interlocks,
        why.Admission);

    private static ApiReading Reading(SensorStatus status) => new(
        status.Sensor.Name, Word(status.Sensor.Kind), status.Doubt is null ? status.Reading.Value : null,
        ReadingWords.Unit(status.Sensor.Kind), status.Doubt, Math.Round(status.Age.TotalSeconds, 1));

    private static ApiAlarm Alarm(Alarm alarm) => new(
        alarm.Key, Word(alarm.Priority), alarm.State.InWords(), Time(alarm.Since.Wall), alarm.Cause, alarm.Consequence, alarm.Action,
        alarm.RespondWithin, alarm.ShelvedUntil is { } until ? Time(until) : null);

    private static ApiProofTest Test(ProofTestStatus test) => new(
        test.Item, Word(test.Kind), test.PassedAt is { } passed ? Time(passed) : null, Time(test.DueAt), test.IsOverdue, test.HasFailed);

    private static ApiProofTestStep Step(ProofTestProgress test) => new(
        test.Item, test.Step, test.Steps, test.Words, test is { AsksPerson: true, WaitsForRack: false }, test.WaitsForRack,
        test.Left.TotalSeconds);

    // The names of our enumerations are the words of the trade, which is what programs read: `PumpFlow` is `pump-flow`.
    private static string Word(Enum word)
    {
        var letters = word.ToString().Select((letter, at) => char.IsUpper(letter) && at > 0 ? $"-{letter}" : $"{letter}");
        return string.Concat(letters).ToLowerInvariant();
    }
}
