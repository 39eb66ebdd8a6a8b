using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices;

/// <summary>What a program is told, in the form that Standard Webhooks recommends: a type, a time and data.</summary>
/// <param name="Type">Always <c>rack.notice</c>, or <c>rack.test</c> for a test message.</param>
/// <param name="Timestamp">When it was written.</param>
/// <param name="Data">What there is to tell.</param>
internal sealed record Payload(string Type, Instant Timestamp, PayloadData Data)
{
    // With letters as they are: what is signed is bytes, and nobody puts them into HTML because of us.
    private static readonly PayloadJson readable =
        new(new JsonSerializerOptions(PayloadJson.Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });

    /// <summary>Tidings as a program is told of them.</summary>
    /// <param name="site">The site.</param>
    /// <param name="writer">Who knows what to do about them.</param>
    /// <param name="told">The tidings, most urgent first.</param>
    /// <param name="now">The time.</param>
    public static string Of(Site site, LetterWriter writer, ImmutableArray<Tiding> told, Instant now)
    {
        var items = told.Select(tiding =>
        {
            var advice = writer.Advice(tiding);
            return new PayloadItem(
                WordOf(tiding.Kind), tiding.Subject, tiding.Priority.InWords(), tiding.At, LetterWriter.Headline(tiding),
                advice?.Action, advice?.Consequence, advice?.RespondWithin);
        });
        var type = told.All(tiding => tiding.Kind == TidingKind.Test) ? "rack.test" : "rack.notice";
        var payload = new Payload(type, now, new PayloadData(site.Name, writer.Subject(told), [.. items]));
        return JsonSerializer.Serialize(payload, readable.Payload);
    }

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

/// <summary>What there is to tell.</summary>
/// <param name="Site">The name of the site.</param>
/// <param name="Subject">It in one line.</param>
/// <param name="Tidings">Each piece of news, most urgent first.</param>
internal sealed record PayloadData(string Site, string Subject, ImmutableArray<PayloadItem> Tidings);

/// <summary>One piece of news.</summary>
/// <param name="Kind">raised, over, not acknowledged, controller stopped, controller silent, controller back, way failed or test.</param>
/// <param name="Subject">The key of an alarm, the site, or the name of a way.</param>
/// <param name="Priority">critical, high, medium or low.</param>
/// <param name="At">When it happened.</param>
/// <param name="What">It in words.</param>
/// <param name="Action">What to do; null where nothing is.</param>
/// <param name="Consequence">What follows if nobody acts; null where nothing is known.</param>
/// <param name="RespondWithin">How soon; null where nothing is to be done.</param>
internal sealed record PayloadItem(
    string Kind, string Subject, string Priority, Instant At, string What, string? Action, string? Consequence, string? RespondWithin);

/// <summary>How it is written, without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, Converters = [typeof(InstantText)])]
[JsonSerializable(typeof(Payload))]
internal sealed partial class PayloadJson : JsonSerializerContext;
