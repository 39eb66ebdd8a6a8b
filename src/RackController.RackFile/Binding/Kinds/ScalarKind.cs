using System.Diagnostics.CodeAnalysis;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>A kind whose value is one piece of text.</summary>
/// <typeparam name="T">What it is read into.</typeparam>
public abstract class ScalarKind<T> : Kind<T>
{
    /// <inheritdoc/>
    public sealed override bool TryRead(
        string name, Node node, Complaints complaints, [MaybeNullWhen(false)] out T value)
    {
        value = default;
        if (node is not ScalarNode scalar)
        {
            complaints.Refuse(
                node.Place, $"`{name}` holds {(node is ListNode ? "a list" : "keys")} where one value belongs",
                $"write {Expected}");
            return false;
        }

        var text = scalar.Text.Trim();
        if (text.Length == 0)
        {
            complaints.Refuse(node.Place, $"`{name}` is empty", $"write {Expected}");
            return false;
        }

        if (Parse(text, out value) is { } misfit)
        {
            complaints.Refuse(
                node.Place, $"`{name}` is {Quote.Text(text)}{(misfit.Why.Length > 0 ? ", " : "")}{misfit.Why}",
                misfit.WhatToDo ?? $"write {Expected}");
            value = default;
            return false;
        }

        return true;
    }

    /// <summary>Reads the text.</summary>
    /// <param name="text">Not empty, without blanks around it.</param>
    /// <param name="value">What was read.</param>
    /// <returns>Why it does not fit; null when it does.</returns>
    protected abstract Misfit? Parse(string text, out T value);
}

/// <summary>Why a text does not fit.</summary>
/// <param name="Why">To follow the text and a comma: <c>which is a mass</c>. Empty when there is no more to say.</param>
/// <param name="WhatToDo">What to do; null to name what is expected.</param>
public sealed record Misfit(string Why, string? WhatToDo = null);
