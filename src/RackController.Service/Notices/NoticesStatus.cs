using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;

namespace RackController.Service;

/// <summary>How the process that sends notices fares, as it keeps it in its file for whoever shows it.</summary>
/// <param name="Trouble">What keeps it from its work as a whole; null while nothing does.</param>
/// <param name="Ways">Every way by which it tells, in the order of the rack file.</param>
public sealed record NoticesStatus(string? Trouble, ImmutableArray<WayStatus> Ways)
{
    /// <summary>What an event of the controller says that asks for a test message by every way.</summary>
    public const string TestAsked = "test of notices asked for";

    /// <summary>Reads the file.</summary>
    /// <param name="path">The file.</param>
    /// <returns>Null where there is none, or none that can be read.</returns>
    public static NoticesStatus? Read(string path)
    {
        try
        {
            var read = JsonSerializer.Deserialize(File.ReadAllText(path), NoticesStatusJson.Default.NoticesStatus);
            return read is null ? null : read with { Ways = read.Ways.IsDefault ? [] : read.Ways };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            return null;
        }
    }
}

/// <summary>How one way of telling fares.</summary>
/// <param name="Name">What it is called: <c>mail to grower@home.example</c>.</param>
/// <param name="LastSuccess">When something last got through; null for never.</param>
/// <param name="Fault">What went wrong last, in one line; null when the last try went well.</param>
/// <param name="FaultAt">When that was.</param>
/// <param name="Waiting">How many messages wait to be sent or tried again.</param>
public sealed record WayStatus(string Name, Instant? LastSuccess, string? Fault, Instant? FaultAt, int Waiting);

/// <summary>How the status is read, without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, Converters = [typeof(InstantText)])]
[JsonSerializable(typeof(NoticesStatus))]
internal sealed partial class NoticesStatusJson : JsonSerializerContext;
