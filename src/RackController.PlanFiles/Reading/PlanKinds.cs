using System.Collections.Immutable;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.PlanFiles;

/// <summary>The kinds of value that several keys of crops and orders share.</summary>
internal static class PlanKinds
{
    // The international pound, exact by definition since 1959; an ounce is a sixteenth of it.
    private const double GPerLb = 453.59237;
    private const double OuncesPerLb = 16;
    private const double UsPerMs = 1000;

    public static TextKind Name { get; } = new("a name", "/:`\"");

    /// <summary>Base unit g.</summary>
    public static Dimension Weight { get; } = new("a weight", "250 g",
    [
        new("g", value => value), new("kg", value => value * 1000), new("oz", value => value * GPerLb / OuncesPerLb),
        new("lb", value => value * GPerLb),
    ]);

    /// <summary>Base unit mol/m2/d.</summary>
    public static Dimension DailyLight { get; } = new("a daily light integral", "8 to 12 mol/m2/d",
    [
        new("mol/m2/d", value => value), new("mol/m²/d", value => value, false),
    ]);

    /// <summary>Base unit h.</summary>
    public static Dimension Hours { get; } = new("a number of hours", "12 to 16 h", [new("h", value => value)]);

    /// <summary>Electrical conductivity at 25 °C; base unit mS/cm.</summary>
    public static QuantityKind Conductivity { get; } = new(
        new Dimension("a conductivity", "1.2 mS/cm",
        [
            new("mS/cm", value => value), new("uS/cm", value => value / UsPerMs), new("µS/cm", value => value / UsPerMs, false),
            new("dS/m", value => value, false),
        ]),
        "0 mS/cm", "3 mS/cm");

    public static QuantityKind SeedWeight { get; } = new(Weight, "0 g", "2 kg");

    public static QuantityKind TrayYield { get; } = new(Weight, "0 g", "10 kg");

    public static QuantityKind OrderWeight { get; } = new(Weight, "1 g", "500 kg");

    public static LocalDateKind Date { get; } = new();

    public static ListKind<IsoDayOfWeek> Weekdays { get; } = new(new ChoiceKind<IsoDayOfWeek>(
    [
        ("mon", IsoDayOfWeek.Monday), ("tue", IsoDayOfWeek.Tuesday), ("wed", IsoDayOfWeek.Wednesday), ("thu", IsoDayOfWeek.Thursday),
        ("fri", IsoDayOfWeek.Friday), ("sat", IsoDayOfWeek.Saturday), ("sun", IsoDayOfWeek.Sunday),
    ]), "weekday", 7);

    /// <summary>Whole days, with their unit.</summary>
    /// <param name="most">The most that can be meant.</param>
    public static WholeRangeKind Days(int most) => new("a number of days", "d", most);

    /// <summary>The weekdays of a list, each once.</summary>
    /// <param name="days">As written.</param>
    public static WorkDays Each(ImmutableArray<IsoDayOfWeek> days) => new([.. days.Distinct().Order()]);
}

/// <summary>A date such as <c>2026-05-04</c>.</summary>
internal sealed class LocalDateKind : ScalarKind<LocalDate>
{
    /// <inheritdoc/>
    public override string Expected => "a date, such as `2026-05-04`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new() { ["type"] = "string", ["format"] = "date" };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out LocalDate value)
    {
        var parsed = LocalDatePattern.Iso.Parse(text);
        value = parsed.Success ? parsed.Value : default;
        return !parsed.Success ? new Misfit("not a date of the calendar")
            : value.Year is < 2000 or > 2100 ? new Misfit("outside 2000 to 2100")
            : null;
    }
}

/// <summary>The path of another file.</summary>
internal sealed class FilePathKind : ScalarKind<string>
{
    private const int Longest = 1000;

    /// <inheritdoc/>
    public override string Expected => "the path of a file, as seen from this one";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new() { ["type"] = "string" };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out string value)
    {
        value = text;
        return text.Length > Longest ? new Misfit("too long") : text.Contains('\0', StringComparison.Ordinal) ? new Misfit("") : null;
    }
}
