using RackController.Growing;
using RackController.RackFile.Binding;
using RackController.Testing;

namespace RackController.PlanFiles.Tests;

public sealed class ShippedCropsTests
{
    private static readonly IReadOnlyList<Crop> crops = Read();

    [Fact]
    public void ThereAreTwentyMicrogreensAndTenTransplants()
    {
        Assert.True(crops.Count(crop => crop.Kind == CropKind.Microgreen) >= 20);
        Assert.True(crops.Count(crop => crop.Kind == CropKind.Transplant) >= 10);
    }

    // Gerovac, Craver, Boldt and Lopez, HortScience 51 (2016) 497-503, from memory: kohlrabi, mizuna and mustard grew under 6, 12 and
    // 18 mol/m2/d. What a plan allows is within or below what they tried.
    [Theory]
    [InlineData("kohlrabi")]
    [InlineData("mizuna")]
    [InlineData("mustard")]
    public void TheLightOfTheCabbageFamilyIsWithinWhatWasTried(string name)
    {
        var daily = crops.Single(crop => crop.Name == name).LitStages[0].DailyLightMolPerM2D;
        Assert.InRange(daily.Least, 6, 18);
        Assert.InRange(daily.Most, 6, 18);
    }

    // Common practice, no source: a rack of ordinary lamps, 16 h at 170 umol/m2/s, grows every microgreen.
    [Fact]
    public void AnOrdinaryTierSuitsEveryMicrogreen()
    {
        var tier = new TierKind(4, 170, 2, "coir");
        Assert.All(
            crops.Where(crop => crop.Kind == CropKind.Microgreen).SelectMany(crop => crop.LitStages),
            stage => Assert.NotNull(Fit.HoursOn(stage, tier)));
    }

    [Fact]
    public void NoCropIsReadyOnlyAfterItIsPast() => Assert.All(crops, crop => Assert.True(crop.FewestDays <= crop.MostDays));

    private static IReadOnlyList<Crop> Read()
    {
        var complaints = new Complaints("crops.yaml");
        var outcome = TextFile.Read(ShippedFiles.PathTo("config/crops.yaml"), complaints, out var text);
        Assert.Equal(TextFileOutcome.Read, outcome);
        Assert.True(new CropsMapping().TryRead("crops", YamlText.Read(text, complaints)!, complaints, out var part));
        var book = new CropBook();
        book.Add(part.Crops, complaints);
        Assert.Empty(complaints.Sorted());
        return [.. book.Names.Select(name => book.Find(name)!)];
    }
}
