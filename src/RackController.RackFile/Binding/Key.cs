using System.Text.Json.Nodes;

namespace RackController.RackFile.Binding;

/// <summary>One key that a mapping may hold, declared once for the reader, the complaints and the schema.</summary>
public abstract class Key
{
    private protected Key(string name, string doc, bool isRequired, string? defaultText)
    {
        Name = name;
        Doc = doc;
        IsRequired = isRequired;
        DefaultText = defaultText;
    }

    /// <summary>The key as written.</summary>
    public string Name { get; }

    /// <summary>What it is, for people.</summary>
    public string Doc { get; }

    /// <summary>Whether a mapping without it is refused.</summary>
    public bool IsRequired { get; }

    /// <summary>What stands for it when it is missing, as it would be written; null when nothing does.</summary>
    public string? DefaultText { get; }

    /// <summary>What belongs there, to follow the word "write".</summary>
    public abstract string Expected { get; }

    /// <summary>A key that must be there.</summary>
    /// <typeparam name="T">What its value is read into.</typeparam>
    /// <param name="name">The key as written.</param>
    /// <param name="kind">What may stand there.</param>
    /// <param name="doc">What it is.</param>
    public static Key<T> Required<T>(string name, Kind<T> kind, string doc) => new(name, kind, doc, true, null);

    /// <summary>A key that may be missing.</summary>
    /// <typeparam name="T">What its value is read into.</typeparam>
    /// <param name="name">The key as written.</param>
    /// <param name="kind">What may stand there.</param>
    /// <param name="doc">What it is, and what happens without it.</param>
    public static Key<T> Optional<T>(string name, Kind<T> kind, string doc) => new(name, kind, doc, false, null);

    /// <summary>A key that has a default.</summary>
    /// <typeparam name="T">What its value is read into.</typeparam>
    /// <param name="name">The key as written.</param>
    /// <param name="kind">What may stand there.</param>
    /// <param name="defaultText">The default as it would be written in the file.</param>
    /// <param name="doc">What it is.</param>
    public static Key<T> Defaulted<T>(string name, Kind<T> kind, string defaultText, string doc) =>
        new(name, kind, doc, false, defaultText);

    /// <summary>A key that has a default in one place, and may be missing in another that looks there.</summary>
    /// <typeparam name="T">What its value is read into.</typeparam>
    /// <param name="name">The key as written.</param>
    /// <param name="kind">What may stand there.</param>
    /// <param name="defaultText">The default as it would be written in the file.</param>
    /// <param name="hasDefault">Whether this is the place that has it.</param>
    /// <param name="doc">What it is.</param>
    internal static Key<T> DefaultedIf<T>(string name, Kind<T> kind, string defaultText, bool hasDefault, string doc) =>
        hasDefault ? Defaulted(name, kind, defaultText, doc) : Optional(name, kind, doc);

    /// <summary>Describes the key for the schema.</summary>
    /// <param name="schema">The schema being written.</param>
    public abstract JsonObject Describe(SchemaWriter schema);

    internal abstract bool TryReadBoxed(Node node, Complaints complaints, out object? value);
}

/// <summary>A key whose value is read into a <typeparamref name="T"/>.</summary>
/// <typeparam name="T">What its value is read into.</typeparam>
public sealed class Key<T> : Key
{
    internal Key(string name, Kind<T> kind, string doc, bool isRequired, string? defaultText)
        : base(name, doc, isRequired, defaultText) => Kind = kind;

    /// <summary>What may stand there.</summary>
    public Kind<T> Kind { get; }

    /// <inheritdoc/>
    public override string Expected => Kind.Expected;

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema)
    {
        var described = Kind.Describe(schema);
        described["description"] = Doc;
        if (DefaultText is not null)
        {
            described["default"] = DefaultText;
        }

        return described;
    }

    internal override bool TryReadBoxed(Node node, Complaints complaints, out object? value)
    {
        var isSound = Kind.TryRead(Name, node, complaints, out var read);
        value = read;
        return isSound;
    }
}
