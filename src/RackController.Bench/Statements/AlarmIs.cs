using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>An alarm is in a state.</summary>
/// <param name="Key">The key of the alarm.</param>
/// <param name="State">The state; null for any that is not normal.</param>
public sealed record AlarmIs(string Key, AlarmState? State) : Statement
{
    /// <inheritdoc/>
    public override Truth Judge(IObserved now)
    {
        var state = now.Alarm(Key);
        return Of(State is { } asked ? state == asked : state != AlarmState.Normal);
    }

    /// <inheritdoc/>
    public override string Words(Site site) => $"the alarm {Key} is {(State is { } asked ? Word(asked) : "active")}";

    /// <inheritdoc/>
    public override string Seen(IObserved now) => $"the alarm {Key} is {Word(now.Alarm(Key))}";

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) =>
        subject == Key || (site.Racks.FirstOrDefault(rack => Key.StartsWith(rack.Name + "/", StringComparison.Ordinal)) is { } rack
            && Vicinity.OfWater(rack.Id).Concerns(site, subject));

    /// <summary>The words that a scenario and a report use for the alarm states of ISA-18.2.</summary>
    /// <param name="state">A state.</param>
    public static string Word(AlarmState state) => state switch
    {
        AlarmState.Normal => "normal",
        AlarmState.Unacknowledged => "unacknowledged",
        AlarmState.Acknowledged => "acknowledged",
        AlarmState.ReturnedUnacknowledged => "returned unacknowledged",
        AlarmState.Latched => "latched",
        AlarmState.Shelved => "shelved",
        AlarmState.SuppressedByDesign => "suppressed by design",
        _ => "out of service",
    };
}
