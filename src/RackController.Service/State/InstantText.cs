using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Text;

namespace RackController.Service;

/// <summary>Times in files: <c>2027-01-15T11:00:00Z</c>.</summary>
public sealed class InstantText : JsonConverter<Instant>
{
    /// <inheritdoc/>
    public override Instant Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var parsed = InstantPattern.ExtendedIso.Parse(reader.GetString() ?? "");
        return parsed.Success ? parsed.Value : throw new JsonException("this is no time, such as 2027-01-15T11:00:00Z");
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Instant value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(InstantPattern.ExtendedIso.Format(value));
    }
}
