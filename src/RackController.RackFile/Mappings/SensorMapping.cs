using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>A sensor as written.</summary>
internal sealed record SensorPart
{
    public required Place Place { get; init; }

    public required SensorKind Kind { get; init; }

    /// <summary>Its name within the rack, tier or circuit: <c>low float</c>.</summary>
    public required string ShortName { get; init; }

    public required bool IsFitted { get; init; }

    public int? TierNumber { get; init; }

    public double HeightMm { get; init; }

    public required Duration StaleAfter { get; init; }

    public LinePart? Line { get; init; }

    public LinePull? Pull { get; init; }

    public Duration? Debounce { get; init; }

    /// <summary>How a measured value is read on a board; null where nothing says so.</summary>
    public ProbePart? Probe { get; init; }

    public bool IsContact => Kind.IsContact();
}

/// <summary>Reads one sensor. A float is written by its height, any other sensor by <c>yes</c>; more keys when needed.</summary>
/// <param name="kind">What it measures.</param>
/// <param name="name">What it is called, and the name of its sensor within the rack.</param>
/// <param name="doc">What it is.</param>
internal sealed class SensorMapping(SensorKind kind, string name, string doc) : Mapping<SensorPart>
{
    private readonly Key<double> heightKey = Key.Required(
        "height", Values.Length, "Height of the float's switching point above the floor of its flood tray, drip tray or reservoir.");

    private readonly Key<bool> fittedKey = Key.Defaulted("fitted", Values.Flag, "yes", "Whether the rack has one.");

    private readonly Key<Duration> staleAfterKey = Key.Defaulted(
        "stale-after", Values.Duration("200 ms", "10 min"), $"{StaleAfter(kind).TotalSeconds:0} s",
        "A reading older than this is unknown.");

    private readonly LineKeys lineKeys = new(
        "Its GPIO line.", "Which level means 1: wet for a float or leak rope, present for a supply.");

    private readonly Key<LinePull> pullKey = Key.Optional(
        "pull", Values.Pull, "The pull that the board puts on the line. Without it: as the I/O section says.");

    private readonly Key<Duration> debounceKey = Key.Optional(
        "debounce", Values.Duration("0 ms", "5 s"), "How long a level must hold. Without it: as the I/O section says.");

    private readonly ProbeKeys? probeKeys = kind.IsContact() ? null : new ProbeKeys(kind);

    /// <summary>After what time a reading is unknown where the file does not say.</summary>
    /// <param name="kind">What is measured.</param>
    public static Duration StaleAfter(SensorKind kind) => Duration.FromSeconds(kind.IsContact() ? 2 : 30);

    /// <inheritdoc/>
    public override string Name => name;

    /// <inheritdoc/>
    public override string Doc => doc;

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys =>
    [
        kind.IsFloat() ? heightKey : fittedKey, staleAfterKey,
        .. kind.IsContact() ? (ImmutableArray<Key>)[.. lineKeys.All, pullKey, debounceKey] : probeKeys!.All,
    ];

    /// <inheritdoc/>
    protected override Key? Shorthand => kind.IsFloat() ? heightKey : fittedKey;

    /// <inheritdoc/>
    protected override SensorPart? Build(MappingReader keys) => new()
    {
        Place = keys.Place,
        Kind = kind,
        ShortName = name,
        IsFitted = kind.IsFloat() || keys.Get(fittedKey),
        HeightMm = kind.IsFloat() ? keys.Get(heightKey) : 0,
        StaleAfter = keys.Get(staleAfterKey),
        Probe = probeKeys?.Read(keys),
        Line = kind.IsContact() ? lineKeys.Read(keys) : null,
        Pull = kind.IsContact() ? keys.FindValue(pullKey) : null,
        Debounce = kind.IsContact() ? keys.FindValue(debounceKey) : null,
    };
}
