using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>An alarm is in a state.</summary>
/// <param name="Key">The key of the alarm; <see cref="Any"/> for whichever is there.</param>
/// <param name="State">The state; null for any that is not normal.</param>
public sealed record AlarmIs(string Key, AlarmState? State) : Statement
{
    /// <summary>The key that stands for whichever alarm is there.</summary>
    public const string Any = "any";

    /// <inheritdoc/>
    public override Truth Judge(IObserved now)
    {
        var state = now.Alarm(Key);
        return Of(State is { } asked ? state == asked : state != AlarmState.Normal);
    }

    /// <inheritdoc/>
    public override string Words(Site site) => $"the alarm {Key} is {(State is { } asked ? asked.InWords() : "active")}";

    /// <inheritdoc/>
    public override string Seen(IObserved now) => $"the alarm {Key} is {now.Alarm(Key).InWords()}";

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) =>
        subject == Key || Key == Any
        || (site.Racks.FirstOrDefault(rack => Key.StartsWith(rack.Name + "/", StringComparison.Ordinal)) is { } rack
            && Vicinity.OfWater(rack.Id).Concerns(site, subject));
}
