using System.Collections.Immutable;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.PlanFiles;

/// <summary>The crops of a file, as written.</summary>
/// <param name="Crops">The crops.</param>
internal sealed record CropsPart(ImmutableArray<CropPart> Crops);

/// <summary>Reads a file of crops.</summary>
internal sealed class CropsMapping : Mapping<CropsPart>
{
    private const int MostCrops = 500;

    /// <summary>A list of crops, wherever one may stand.</summary>
    public static ListKind<CropPart> List { get; } = new(new CropMapping(), "crop", MostCrops);

    private static readonly Key<ImmutableArray<CropPart>> cropsKey = Key.Required("crops", List, "The crops.");

    /// <inheritdoc/>
    public override string Name => "crops file";

    /// <inheritdoc/>
    public override string Doc => "What crops need and give.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [cropsKey];

    /// <inheritdoc/>
    protected override CropsPart? Build(MappingReader keys) => new(keys.Get(cropsKey));
}
