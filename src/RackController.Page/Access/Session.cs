using System.Collections.Immutable;
using System.Text.Json.Serialization;
using NodaTime;
using RackController.Service;

namespace RackController.Page;

/// <summary>A browser in which somebody has signed in.</summary>
/// <param name="Digest">The SHA-256 of what its cookie says; that itself is kept nowhere but in the browser.</param>
/// <param name="Person">Who.</param>
/// <param name="PasswordKey">Under which of their passwords (<see cref="Person.PasswordKey"/>).</param>
/// <param name="BeganAt">When they signed in.</param>
/// <param name="UsedAt">When they last asked for something.</param>
/// <param name="Device">What they signed in with, in a few words.</param>
/// <param name="From">From which address.</param>
public sealed record Session(
    string Digest, string Person, string PasswordKey, Instant BeganAt, Instant UsedAt, string Device, string From);

/// <summary>What the file of sessions says.</summary>
/// <param name="Sessions">Every session.</param>
/// <param name="Tokens">When each token was last used, by its digest.</param>
internal sealed record SessionsContent(ImmutableArray<Session> Sessions, ImmutableSortedDictionary<string, Instant> Tokens);

/// <summary>How it is written, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true,
    Converters = [typeof(InstantText)])]
[JsonSerializable(typeof(SessionsContent))]
internal sealed partial class SessionsJson : JsonSerializerContext;
