using System.Globalization;
using System.Text.Json.Nodes;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>How long a work of upkeep may wait: <c>50 floods or 14 d</c>, <c>200 h of pump</c>, or <c>never</c>.</summary>
internal sealed class UpkeepIntervalKind : ScalarKind<UpkeepInterval?>
{
    private const string Never = "never";
    private const string Floods = "floods";
    private const string Days = "d";
    private const string PumpHours = "h of pump";

    /// <inheritdoc/>
    public override string Expected => $"a number of `{Floods}`, `{Days}` or `{PumpHours}`, or several with `or` between them, such as "
        + $"`50 floods or 14 d`; or `{Never}`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["pattern"] = $"^({Never}|[0-9]+ *({Floods}|{Days}|{PumpHours})( +or +[0-9]+ *({Floods}|{Days}|{PumpHours})){{0,2}})$",
        ["examples"] = new JsonArray("50 floods or 14 d", "200 h of pump", Never),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out UpkeepInterval? value)
    {
        value = null;
        if (text == Never)
        {
            return null;
        }

        var every = new UpkeepInterval(null, null, null);
        foreach (var part in text.Split(" or ", StringSplitOptions.TrimEntries))
        {
            var (before, misfit) = (every, With(every, part, out every));
            if (misfit is not null || every == before)
            {
                return misfit ?? new Misfit($"which says {Quote.Text(part)} twice", "write each count once");
            }
        }

        value = every;
        return null;
    }

    private static Misfit? With(UpkeepInterval every, string part, out UpkeepInterval changed)
    {
        changed = every;
        var digits = part.TakeWhile(char.IsAsciiDigit).Count();
        if (!int.TryParse(part.AsSpan(0, digits), NumberStyles.None, CultureInfo.InvariantCulture, out var count))
        {
            return new Misfit("not a whole number of anything");
        }

        var unit = part[digits..].Trim();
        var most = unit switch
        {
            Floods => UpkeepInterval.MostFloods,
            Days => UpkeepInterval.MostDays,
            PumpHours => UpkeepInterval.MostPumpHours,
            _ => 0,
        };
        if (most == 0)
        {
            return new Misfit(unit.Length == 0 ? "without a unit" : $"with the unknown unit {Quote.Text(unit)}");
        }

        if (count < 1 || count > most)
        {
            return new Misfit(
                string.Create(CultureInfo.InvariantCulture, $"outside 1 to {most} {unit}"),
                $"less often is `{Never}`, and more often than a person can is none");
        }

        changed = unit switch
        {
            Floods => every with { Floods = every.Floods ?? count },
            Days => every with { Days = every.Days ?? count },
            _ => every with { PumpOn = every.PumpOn ?? Duration.FromHours(count) },
        };
        return null;
    }
}
