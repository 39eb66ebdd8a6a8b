using System.Collections.Immutable;
using RackController.Plant;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>Reads how the simulated site is found at the start.</summary>
internal sealed class FoundMapping : Mapping<PlantStart>
{
    private const double MmPerM = 1000;

    // FAO-56 table 12 (from memory) for young and grown small vegetables; seeds that lie in the dark under a cover are an assumption.
    private static readonly (string Word, double Factor)[] stages = [("sown", 0.3), ("seedlings", 0.7), ("full canopy", 1.05)];
    private static readonly ChoiceKind<double> crops = new([.. stages]);

    private static readonly QuantityKind conductivity = new(ScenarioDimensions.Conductivity, "0 mS/cm", "3 mS/cm");

    private readonly Key<double> water = Key.Optional(
        "water", new QuantityKind(Dimensions.Temperature, "0 °C", "40 °C"), "The temperature of the water.");

    private readonly Key<double> solution = Key.Optional("solution", conductivity, "The conductivity of reservoirs and media.");
    private readonly Key<double> topUp = Key.Optional("top-up", conductivity, "The conductivity of the water that refills them.");
    private readonly Key<double> crop = Key.Optional("crop", crops, "How far the crop is, and so how much it drinks.");
    private readonly Key<double> altitude = Key.Optional(
        "altitude", new QuantityKind(Dimensions.Length, "0 m", "5000 m"), "How high the site lies: in thin air, water holds less oxygen.");

    /// <summary>How a scenario calls the stage of a crop.</summary>
    /// <param name="factor">One of those that it can be.</param>
    public static string CropWord(double factor) => stages.First(stage => stage.Factor == factor).Word;

    public override string Name => "found";

    public override string Doc => "How the simulated site is found at the start.";

    public override ImmutableArray<Key> Keys => [water, solution, topUp, crop, altitude];

    protected override PlantStart Build(MappingReader keys)
    {
        var usual = PlantStart.Default;
        return usual with
        {
            WaterC = keys.FindValue(water) ?? usual.WaterC,
            ConductivityMsPerCm = keys.FindValue(solution) ?? usual.ConductivityMsPerCm,
            TopUpMsPerCm = keys.FindValue(topUp) ?? usual.TopUpMsPerCm,
            CropFactor = keys.FindValue(crop) ?? usual.CropFactor,
            AltitudeM = keys.FindValue(altitude) / MmPerM ?? usual.AltitudeM,
        };
    }
}
