using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;
using RackController.Control;
using RackController.Model;

namespace RackController.Notices;

/// <summary>What a program is told, in the form that Standard Webhooks recommends: a type, a time and data. The type is always
/// <c>rack.notice</c>, or <c>rack.test</c> for a test message.</summary>
internal static class Payload
{
    // With letters as they are: what is signed is bytes, and nobody puts them into HTML because of us.
    private static readonly JsonSerializerOptions readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Tidings as a program is told of them.</summary>
    /// <param name="site">The site.</param>
    /// <param name="writer">Who knows what to do about them.</param>
    /// <param name="told">The tidings, most urgent first.</param>
    /// <param name="now">The time.</param>
    public static string Of(Site site, LetterWriter writer, ImmutableArray<Tiding> told, Instant now)
    {
        var payload = new JsonObject
        {
            ["type"] = told.All(tiding => tiding.Kind == TidingKind.Test) ? "rack.test" : "rack.notice",
            ["timestamp"] = Time(now),
            ["data"] = new JsonObject
            {
                ["site"] = site.Name,
                ["subject"] = writer.Subject(told),
                ["tidings"] = new JsonArray([.. told.Select(tiding => Item(tiding, writer))]),
            },
        };
        return payload.ToJsonString(readable);
    }

    // What to do, what follows and how soon are null where there is nothing to do, or nothing is known.
    private static JsonObject Item(Tiding tiding, LetterWriter writer)
    {
        var advice = writer.Advice(tiding);
        return new JsonObject
        {
            ["kind"] = WordOf(tiding.Kind),
            ["subject"] = tiding.Subject,
            ["priority"] = tiding.Priority.InWords(),
            ["at"] = Time(tiding.At),
            ["what"] = LetterWriter.Headline(tiding),
            ["action"] = advice?.Action,
            ["consequence"] = advice?.Consequence,
            ["respondWithin"] = advice?.RespondWithin,
        };
    }

    private static string Time(Instant at) => InstantPattern.ExtendedIso.Format(at);

    private static string WordOf(TidingKind kind) => kind switch
    {
        TidingKind.Raised => "raised",
        TidingKind.Over => "over",
        TidingKind.Unseen => "not acknowledged",
        TidingKind.Stopped => "controller stopped",
        TidingKind.Silent => "controller silent",
        TidingKind.Back => "controller back",
        TidingKind.WayFailed => "way failed",
        TidingKind.Test => "test",
        _ => throw new InvariantBrokenException($"every tiding has its word, {kind} too"),
    };
}
