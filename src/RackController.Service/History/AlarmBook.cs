using System.Collections.Frozen;
using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>Every alarm that a site can have, with its priority.</summary>
/// <param name="site">The site.</param>
public sealed class AlarmBook(Site site)
{
    private readonly FrozenDictionary<string, AlarmText> ofController = ControllerAlarms.Texts.ToFrozenDictionary();

    /// <summary>The alarms of its racks and circuits, in the order of the cause-and-effect table.</summary>
    public ImmutableArray<(string Key, AlarmText Text)> OfSite { get; } =
    [
        .. CauseAndEffectTable.At(site).Where(at => at.Row.Alarm is not null)
            .SelectMany(at => at.Stands.Select(stand => ($"{stand.Place}/{at.Row.Id}", at.Row.Alarm!))),
    ];

    /// <summary>How urgent an alarm is; null for one that the site does not have any more.</summary>
    /// <param name="key">Its key.</param>
    public AlarmPriority? PriorityOf(string key) => TextOf(key)?.Priority;

    /// <summary>What a person is told of an alarm; null for one that the site does not have any more.</summary>
    /// <param name="key">Its key.</param>
    public AlarmText? TextOf(string key) => ofController.TryGetValue(key, out var known) ? known
        : OfSite.FirstOrDefault(alarm => alarm.Key == key).Text;

    /// <summary>Whether an alarm can be shelved and taken out of service. Those of the controller itself cannot: nothing else tells
    /// that it has trouble.</summary>
    /// <param name="key">Its key.</param>
    public bool CanBePutAside(string key) => OfSite.Any(alarm => alarm.Key == key);
}
