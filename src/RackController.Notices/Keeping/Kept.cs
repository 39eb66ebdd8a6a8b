using System.Collections.Immutable;
using System.Text.Json.Serialization;
using NodaTime;
using RackController.Service;

namespace RackController.Notices;

/// <summary>Everything that must outlast the process that sends notices: where in the journal it stands, what it told, what
/// waits.</summary>
internal sealed record Kept
{
    /// <summary>What keeps it from its work as a whole; null while nothing does.</summary>
    public string? Trouble { get; init; }

    /// <summary>How every way fares.</summary>
    public ImmutableArray<WayStatus> Ways { get; init; } = [];

    /// <summary>The last event that was taken; null before the first.</summary>
    public Position? Position { get; init; }

    /// <summary>That the controller is stopped or silent; null while it is neither.</summary>
    public Downtime? Down { get; init; }

    /// <summary>The alarms that called.</summary>
    public ImmutableArray<KnownAlarm> Alarms { get; init; } = [];

    /// <summary>What waits to be told.</summary>
    public ImmutableArray<Tiding> Pending { get; init; } = [];

    /// <summary>What waits to be sent.</summary>
    public ImmutableArray<Letter> Outbox { get; init; } = [];
}

/// <summary>An event of the journal, known again by its number and its time: a journal that was begun anew counts from 1.</summary>
/// <param name="Number">Its number; 0 before the first.</param>
/// <param name="Wall">Its time.</param>
internal sealed record Position(long Number, Instant Wall)
{
    /// <summary>Before the first event of a journal.</summary>
    public static Position Beginning { get; } = new(0, Instant.FromUnixTimeTicks(0));
}

/// <summary>A message to one way, as it is sent and sent again.</summary>
/// <param name="Id">Unique, and the same at every try, so that whoever gets it twice can tell.</param>
/// <param name="Way">The name of the way.</param>
/// <param name="Subject">What it is about, in one line.</param>
/// <param name="Body">What it says.</param>
/// <param name="MadeAt">When it was written.</param>
internal sealed record Letter(string Id, string Way, string Subject, string Body, Instant MadeAt)
{
    /// <summary>The messages that it goes on from.</summary>
    public ImmutableArray<string> References { get; init; } = [];

    /// <summary>How often it was tried in vain.</summary>
    public int Tries { get; init; }

    /// <summary>When it is tried next.</summary>
    public Instant NextTry { get; init; }

    /// <summary>Whether it tells of nothing but other ways that fail: that it fails too is not told again.</summary>
    public bool IsAboutWays { get; init; }
}

/// <summary>How it is written and read, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UseStringEnumConverter = true, Converters = [typeof(InstantText)],
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, WriteIndented = true)]
[JsonSerializable(typeof(Kept))]
internal sealed partial class KeptJson : JsonSerializerContext;
