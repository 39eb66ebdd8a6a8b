using System.Text.Json.Nodes;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>The name of a time zone of the IANA database.</summary>
internal sealed class ZoneKind : ScalarKind<DateTimeZone>
{
    /// <inheritdoc/>
    public override string Expected => "an IANA time zone, such as `Europe/London` or `America/Chicago`";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["type"] = "string",
        ["minLength"] = 1,
        ["examples"] = new JsonArray("Europe/London", "America/Chicago"),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out DateTimeZone value)
    {
        var zones = DateTimeZoneProviders.Tzdb;
        value = zones.Ids.Contains(text) ? zones[text] : DateTimeZone.Utc;
        return zones.Ids.Contains(text)
            ? null
            : new Misfit(
                "not a zone of the IANA database",
                NearestName.Of(text, zones.Ids) is { } near ? $"did you mean `{near}`?" : null);
    }
}
