using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Exploring;

/// <summary>
/// Every state that one interlock can come to, by whatever its sensors, relays, people and restarts do in whatever order, and every
/// turning between them: breadth first, until no turning leads to a state that was not seen. Two states are one when their memory,
/// their answer and what they are told are the same and their timers have the same lengths of time before and behind them.
/// </summary>
internal sealed class RowWalk
{
    // A row that needs more has something in its memory that a walk should not tell apart.
    private const int MostStates = 100_000;

    private readonly Wanderer wanderer;
    private readonly Portrait portrait;
    private readonly Dictionary<string, int> placeOf = [];
    private readonly List<Standpoint> states = [];
    private readonly List<(int From, TurningKind Kind, int To)> turnings = [];

    public RowWalk(Site site, string key)
    {
        var levels = new List<SensorLevel>();
        var interlock = Wanderer.All(site, Surroundings.AtRest(site).Now, levels).Single(each => each.Key == key);
        wanderer = new Wanderer(site, interlock);
        portrait = new Portrait(Lengths(site, interlock));
        var all = Inputs.Of(site, levels.ToLookup(level => level.Sensor, level => level.Value));
        Matters = Sensitivity.Find(wanderer, portrait, all);
        Walk();
    }

    /// <summary>The inputs on which its state hangs.</summary>
    public ImmutableArray<Input> Matters { get; }

    /// <summary>Every state.</summary>
    public IReadOnlyList<Standpoint> States => states;

    /// <summary>Every turning, between the places of two states among <see cref="States"/>.</summary>
    public IReadOnlyList<(int From, TurningKind Kind, int To)> Turnings => turnings;

    /// <summary>Who takes the turnings.</summary>
    public Wanderer Wanderer => wanderer;

    /// <summary>The lengths of time that an interlock is held to.</summary>
    public static ImmutableArray<Duration> Lengths(Site site, Interlock interlock)
    {
        var limits = typeof(InterlockLimits).GetProperties().Where(property => property.PropertyType == typeof(Duration))
            .Select(property => (Duration)property.GetValue(site.Racks[0].Limits)!);
        var own = interlock.GetType().GetFields(System.Reflection.BindingFlags.Static | System.Reflection.BindingFlags.NonPublic)
            .Where(field => field.FieldType == typeof(Duration)).Select(field => (Duration)field.GetValue(null)!);
        return [.. limits.Concat(own).Append(Duration.Epsilon).Append(Duration.FromHours(24)).Distinct().Order()];
    }

    private void Walk()
    {
        PlaceOf(wanderer.Start);
        for (var from = 0; from < states.Count; from++)
        {
            Invariant.Holds(states.Count < MostStates, $"{states[0].Interlock.Key} comes to too many states: {states[from].Way}");
            foreach (var (kind, to) in wanderer.Turnings(states[from], Matters))
            {
                turnings.Add((from, kind, PlaceOf(to)));
            }
        }
    }

    private int PlaceOf(Standpoint state)
    {
        var key = KeyOf(state);
        if (!placeOf.TryGetValue(key, out var place))
        {
            placeOf[key] = place = states.Count;
            states.Add(state);
        }

        return place;
    }

    private string KeyOf(Standpoint state) => Sensitivity.KeyOf(state, portrait, Matters);
}
