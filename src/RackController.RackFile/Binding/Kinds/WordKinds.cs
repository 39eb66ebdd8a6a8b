using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using NodaTime;
using RackController.Model;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>A few words: a name or a label.</summary>
/// <param name="noun">With its article: <c>a name</c>.</param>
/// <param name="forbidden">Letters that may not occur.</param>
public class TextKind(string noun, string forbidden) : ScalarKind<string>
{
    private const int Longest = 60;

    /// <inheritdoc/>
    public override string Expected => $"{noun} of at most {Longest} letters"
        + (forbidden.Length > 0 ? $", without {string.Join(' ', forbidden.ToCharArray())}" : "");

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["minLength"] = 1,
        ["maxLength"] = Longest,
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out string value)
    {
        value = text;
        return text.Length > Longest ? new Misfit("too long")
            : text.AsSpan().IndexOfAny(forbidden) >= 0 || text.Any(IsHarmful)
                ? new Misfit("with a letter that cannot stand there")
            : null;
    }

    private static bool IsHarmful(char letter) => char.GetUnicodeCategory(letter)
        is UnicodeCategory.Control or UnicodeCategory.Format
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}

/// <summary>One of a few words.</summary>
/// <typeparam name="T">What the word is read into.</typeparam>
/// <param name="choices">The words and what they mean.</param>
public sealed class ChoiceKind<T>(ImmutableArray<(string Word, T Meaning)> choices) : ScalarKind<T>
{
    /// <inheritdoc/>
    public override string Expected => string.Join(" or ", choices.Select(choice => $"`{choice.Word}`"));

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["enum"] = new JsonArray([.. choices.Select(choice => (JsonNode)choice.Word)]),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out T value)
    {
        foreach (var (word, meaning) in choices)
        {
            if (word == text)
            {
                value = meaning;
                return null;
            }
        }

        value = default!;
        return NearestName.Of(text, choices.Select(choice => choice.Word)) is { } near
            ? new Misfit("", $"did you mean `{near}`? Write {Expected}")
            : new Misfit("");
    }
}

/// <summary>Yes or no.</summary>
public sealed class FlagKind : ScalarKind<bool>
{
    /// <inheritdoc/>
    public override string Expected => "`yes` or `no`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new() { ["enum"] = new JsonArray("yes", "no", true, false) };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out bool value)
    {
        value = text is "yes" or "true";
        return value || text is "no" or "false" ? null : new Misfit("");
    }
}

/// <summary>A local time of day such as <c>06:00</c>.</summary>
public sealed class LocalTimeKind : ScalarKind<LocalTime>
{
    /// <inheritdoc/>
    public override string Expected => "a time from `00:00` to `23:59`, such as `06:30`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = "^([01]?[0-9]|2[0-3]):[0-5][0-9]$",
        ["examples"] = new JsonArray("06:30"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out LocalTime value)
    {
        value = default;
        var parts = text.Split(':');
        if (parts.Length != 2 || parts[0].Length is 0 or > 2 || parts[1].Length != 2
            || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var hour)
            || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var minute))
        {
            return new Misfit("not a time of day");
        }

        if (hour > 23 || minute > 59)
        {
            return new Misfit("not a time of any day", hour == 24 ? "write midnight as `00:00`" : null);
        }

        value = new LocalTime(hour, minute);
        return null;
    }
}
