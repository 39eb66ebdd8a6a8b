using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>A local date such as <c>2026-11-30</c>.</summary>
public sealed class DateKind : ScalarKind<LocalDate>
{
    // As on the command line: beyond, somebody mistyped.
    private const int FirstYear = 2000;
    private const int LastYear = 2100;

    /// <inheritdoc/>
    public override string Expected => $"a date in a year from {FirstYear} to {LastYear}, such as `2026-11-30`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["format"] = "date",
        ["examples"] = new JsonArray("2026-11-30"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out LocalDate value)
    {
        var parsed = LocalDatePattern.Iso.Parse(text);
        value = parsed.Success ? parsed.Value : default;
        return !parsed.Success ? new Misfit("not a date")
            : value.Year is < FirstYear or > LastYear ? new Misfit("out of range")
            : null;
    }
}
