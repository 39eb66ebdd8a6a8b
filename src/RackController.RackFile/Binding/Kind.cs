using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;

namespace RackController.RackFile.Binding;

/// <summary>
/// What may stand as the value of a key: it reads a node, complains about what does not fit, and describes itself for
/// the JSON Schema. One object, without state.
/// </summary>
/// <typeparam name="T">What it is read into.</typeparam>
public abstract class Kind<T>
{
    /// <summary>What belongs here, to follow the word "write": <c>a length (mm, cm, m, in, ft), such as `45 mm`</c>.</summary>
    public abstract string Expected { get; }

    /// <summary>Reads a node.</summary>
    /// <param name="name">What the value is called in a complaint.</param>
    /// <param name="node">The node.</param>
    /// <param name="complaints">Where to say what does not fit.</param>
    /// <param name="value">What was read.</param>
    /// <returns>Whether it fits; if not, a complaint has been made.</returns>
    public abstract bool TryRead(string name, Node node, Complaints complaints, [MaybeNullWhen(false)] out T value);

    /// <summary>Describes what may stand here.</summary>
    /// <param name="schema">The schema being written.</param>
    public abstract JsonObject Describe(SchemaWriter schema);
}
