using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using NodaTime;
using RackController.Model;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>A duration such as <c>30 min</c> or <c>1 h 30 min</c>.</summary>
/// <param name="least">The shortest that can be meant, as it would be written.</param>
/// <param name="most">The longest.</param>
/// <param name="why">Why not beyond them; empty when it speaks for itself.</param>
public sealed partial class DurationKind(string least, string most, string why) : ScalarKind<Duration>
{
    /// <inheritdoc/>
    public override string Expected => $"a duration ({Dimensions.Time.UnitNames}), such as `30 min` or `1 h 30 min`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = "^([0-9]+(\\.[0-9]+)? *(d|h|min|s|ms) *)+$",
        ["examples"] = new JsonArray("30 min", "1 h 30 min"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out Duration value)
    {
        if (Convert(text, out value) is { } misfit)
        {
            return misfit;
        }

        return value < Bound(least) || value > Bound(most)
            ? new Misfit($"outside {least} to {most}", why.Length > 0 ? why : "check the number and its unit")
            : null;
    }

    private static Misfit? Convert(string text, out Duration value)
    {
        value = Duration.Zero;
        var parts = Parts().Match(text);
        if (!parts.Success)
        {
            return QuantityKind.Convert(Dimensions.Time, text, out _) ?? new Misfit("not a duration");
        }

        var smallest = double.PositiveInfinity;
        foreach (Capture part in parts.Groups["part"].Captures)
        {
            if (QuantityKind.Convert(Dimensions.Time, part.Value.Trim(), out var seconds) is { } misfit)
            {
                return misfit;
            }

            NumberText.TrySplit(part.Value.Trim(), out _, out var unitText);
            var unitSeconds = Dimensions.Time.Find(unitText)!.ToBase(1);
            if (unitSeconds >= smallest)
            {
                return new Misfit("with its units out of order", "write the longer unit first, each once, such as `1 h 30 min`");
            }

            smallest = unitSeconds;
            if (seconds > 1e9)
            {
                return new Misfit("longer than a rack lives");
            }

            value += Duration.FromMilliseconds(Math.Round(seconds * 1000));
        }

        return null;
    }

    private static Duration Bound(string text)
    {
        Invariant.Holds(Convert(text, out var bound) is null, "a bound is a duration");
        return bound;
    }

    [GeneratedRegex(@"^(?<part>\d{1,9}(?:\.\d{1,6})? *[a-zA-Z]+ *)+$", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();
}
