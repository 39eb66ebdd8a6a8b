using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;

namespace RackController.Service;

/// <summary>Entries of the growing book as JSON.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, IgnoreReadOnlyProperties = true, RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true, Converters = [typeof(InstantText), typeof(DayText)])]
[JsonSerializable(typeof(BookEntry))]
internal sealed partial class BookJson : JsonSerializerContext;

/// <summary>Days in files: <c>2027-01-15</c>.</summary>
internal sealed class DayText : JsonConverter<LocalDate>
{
    /// <inheritdoc/>
    public override LocalDate Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var parsed = LocalDatePattern.Iso.Parse(reader.GetString() ?? "");
        return parsed.Success ? parsed.Value : throw new JsonException("this is no day, such as 2027-01-15");
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, LocalDate value, JsonSerializerOptions options) =>
        writer.WriteStringValue(LocalDatePattern.Iso.Format(value));
}
