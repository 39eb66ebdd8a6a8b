using System.Collections.Immutable;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>A light as written.</summary>
/// <param name="Load">Its relay and nameplate.</param>
/// <param name="PpfdUmolPerM2S">Photon flux density at the canopy with the light on.</param>
/// <param name="PpfdPerLux">Photon flux for each lux of it.</param>
internal sealed record LightPart(LoadPart Load, double PpfdUmolPerM2S, double PpfdPerLux);

/// <summary>Reads the light of a tier.</summary>
internal sealed class LightMapping : Mapping<LightPart>
{
    private static readonly Key<double> ppfdKey = Key.Required(
        "ppfd", new QuantityKind(Dimensions.PhotonFlux, "0 umol/m2/s", "2000 umol/m2/s"),
        "Photosynthetic photon flux density at the canopy with the light on.");

    private static readonly Key<double> ppfdPerLuxKey = Key.Defaulted(
        "ppfd-per-lux", new NumberKind("a factor", 0.001, 1), "0.015",
        "Photon flux in umol/m2/s for each lux of the lamp, by its data sheet or by two meters side by side. The default is common "
        + "practice for white LED lamps; red and blue ones are far from it.");

    /// <inheritdoc/>
    public override string Name => "light";

    /// <inheritdoc/>
    public override string Doc => "The light of a tier.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [ppfdKey, ppfdPerLuxKey, .. LoadKeys.Light.All];

    /// <inheritdoc/>
    protected override LightPart? Build(MappingReader keys) =>
        LoadKeys.Light.Read(keys) is { } load ? new LightPart(load, keys.Get(ppfdKey), keys.Get(ppfdPerLuxKey)) : null;
}

/// <summary>Reads the valve of a tier.</summary>
internal sealed class ValveMapping : Mapping<LoadPart>
{
    /// <inheritdoc/>
    public override string Name => "valve";

    /// <inheritdoc/>
    public override string Doc => "The valve that admits water from the supply riser to a tier.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => LoadKeys.Valve.All;

    /// <inheritdoc/>
    protected override LoadPart? Build(MappingReader keys) => LoadKeys.Valve.Read(keys);
}

/// <summary>A fan or aerator as written.</summary>
/// <param name="Load">Its relay and nameplate.</param>
/// <param name="Run">How it runs.</param>
internal sealed record RunnerPart(LoadPart Load, RunPart Run);

/// <summary>Reads a fan or the aerator.</summary>
/// <param name="name">Which of the two.</param>
/// <param name="doc">What it does.</param>
/// <param name="loadKeys">The keys of its kind.</param>
/// <param name="unnamed">What it is called without a name; empty where its number among others decides.</param>
internal sealed class RunnerMapping(string name, string doc, LoadKeys loadKeys, string unnamed) : Mapping<RunnerPart>
{
    private static readonly Key<string> nameKey = Key.Optional(
        "name", Values.Name, "What it is called within the rack. Without it: by its kind, fans numbered where there are several.");

    private static readonly Key<RunPart> runKey = Key.Defaulted("run", new RunMapping(), "always", "How it runs.");

    public static RunnerMapping Fan { get; } = new("fan", "Moves air.", LoadKeys.Fan, "");

    public static RunnerMapping Aerator { get; } =
        new("aerator", "Keeps the reservoir's water alive.", LoadKeys.Aerator, "aerator");

    /// <inheritdoc/>
    public override string Name => name;

    /// <inheritdoc/>
    public override string Doc => doc;

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [nameKey, runKey, .. loadKeys.All];

    /// <inheritdoc/>
    protected override RunnerPart? Build(MappingReader keys) => loadKeys.Read(keys) is { } load
        ? new RunnerPart(load with { ShortName = keys.Find(nameKey) ?? unnamed }, keys.Get(runKey))
        : null;
}
