using System.Collections.Immutable;
using RackController.Model;

namespace RackController.RackFile.Binding;

/// <summary>The values of one mapping, with their places, while its object is built.</summary>
public sealed class MappingReader
{
    private readonly MappingNode node;
    private readonly ImmutableArray<Key> declared;
    private readonly Dictionary<Key, Node> given = [];
    private readonly Dictionary<Key, object?> values = [];

    internal MappingReader(string name, ImmutableArray<Key> declared, MappingNode node, Complaints complaints)
    {
        this.declared = declared;
        this.node = node;
        Complaints = complaints;
        IsSound = TakeEntries(name) & TakeDefaultsAndMissing(name);
    }

    /// <summary>Where to say what is wrong.</summary>
    public Complaints Complaints { get; }

    /// <summary>Where the mapping begins.</summary>
    public Place Place => node.Place;

    /// <summary>Whether every declared key that is required is there and every value fits.</summary>
    public bool IsSound { get; }

    /// <summary>Whether a key has a sound value, written or by default.</summary>
    /// <param name="key">A declared key.</param>
    public bool Has(Key key)
    {
        Invariant.Holds(declared.Contains(key), $"`{key.Name}` is declared");
        return values.ContainsKey(key);
    }

    /// <summary>Whether a key is written in the file, sound or not.</summary>
    /// <param name="key">A declared key.</param>
    public bool IsWritten(Key key) => given.ContainsKey(key);

    /// <summary>Whether a key is written in the file and its value was refused: what it would have said is not known.</summary>
    /// <param name="key">A declared key.</param>
    public bool WasRefused(Key key) => IsWritten(key) && !Has(key);

    /// <summary>The value of a key that has one.</summary>
    /// <typeparam name="T">What it was read into.</typeparam>
    /// <param name="key">A declared key for which <see cref="Has"/> holds.</param>
    public T Get<T>(Key<T> key)
    {
        Invariant.Holds(Has(key), $"`{key.Name}` has a value");
        return (T)values[key]!;
    }

    /// <summary>The value of a key, or null.</summary>
    /// <typeparam name="T">What it was read into.</typeparam>
    /// <param name="key">A declared key.</param>
    public T? Find<T>(Key<T> key)
        where T : class => Has(key) ? Get(key) : null;

    /// <summary>The number, time or other small value of a key, or null.</summary>
    /// <typeparam name="T">What it was read into.</typeparam>
    /// <param name="key">A declared key.</param>
    public T? FindValue<T>(Key<T> key)
        where T : struct => Has(key) ? Get(key) : null;

    /// <summary>Where the value of a key stands, or the mapping when it is not written.</summary>
    /// <param name="key">A declared key.</param>
    public Place At(Key key) => given.TryGetValue(key, out var node) ? node.Place : Place;

    /// <summary>Says that the value of a key cannot be.</summary>
    /// <param name="key">A declared key.</param>
    /// <param name="what">What is wrong.</param>
    /// <param name="whatToDo">What to do about it.</param>
    public void Refuse(Key key, string what, string whatToDo) => Complaints.Refuse(At(key), what, whatToDo);

    private bool TakeEntries(string name)
    {
        var isSound = true;
        foreach (var entry in node.Entries)
        {
            if (declared.FirstOrDefault(key => key.Name == entry.Key) is not { } key)
            {
                Complaints.Refuse(
                    entry.KeyPlace, $"{name} has no key {Quote.Text(entry.Key)}",
                    NearestName.Advice(entry.Key, [.. declared.Select(one => one.Name)]));
            }
            else if (!given.TryAdd(key, entry.Value))
            {
                Complaints.Refuse(entry.KeyPlace, $"`{key.Name}` stands here a second time", "keep one of them");
            }
            else if (key.TryReadBoxed(entry.Value, Complaints, out var value))
            {
                values.Add(key, value);
            }
            else
            {
                isSound = false;
            }
        }

        return isSound;
    }

    private bool TakeDefaultsAndMissing(string name)
    {
        var isSound = true;
        foreach (var key in declared.Where(key => !given.ContainsKey(key)))
        {
            if (key.DefaultText is { } text)
            {
                var isFit = key.TryReadBoxed(new ScalarNode(Place, text, false), Complaints, out var value);
                Invariant.Holds(isFit, $"the default of `{key.Name}` fits its kind");
                values.Add(key, value);
            }
            else if (key.IsRequired)
            {
                isSound = false;
                if (!IsMisspelt(key))
                {
                    Complaints.Refuse(Place, $"{name} lacks `{key.Name}`", $"write `{key.Name}:` with {key.Expected}");
                }
            }
        }

        return isSound;
    }

    /// <summary>Whether a key that is missing was meant by one that is unknown, which has been said already.</summary>
    private bool IsMisspelt(Key missing) => node.Entries.Any(entry =>
        declared.All(key => key.Name != entry.Key) && NearestName.Of(entry.Key, [missing.Name]) is not null);
}
