using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>Whose current can be known at all.</summary>
public class LoadCurrentsTests
{
    [Fact]
    public void WithoutASensorNobodysIs() => Assert.Empty(MeasuredOn(Sites.OneRack()));

    [Fact]
    public void ASensorInItsWireTellsOfThePumpAlone() =>
        Assert.Equal(["north/pump"], MeasuredOn(Sites.OneRack().WithPumpCurrent()));

    [Fact]
    public void ASensorOfTheCircuitTellsOfAll() => Assert.Equal(7, MeasuredOn(Sites.OneRack().WithCircuitCurrent()).Count());

    /// <summary>Half of what a fan draws, 0.05 A, is more than an eight-hundredth of 32 A, 0.04 A; half of what a valve draws is less.
    /// </summary>
    [Fact]
    public void OfALargeCircuitItTellsNothingOfSmallLoads()
    {
        var site = Sites.OneRack().WithCircuitCurrent();
        var large = site with { Circuits = [site.Circuits[0] with { BreakerA = 32 }] };
        Assert.Equal(
            ["north/fan", "north/pump", "north/tier 1 light", "north/tier 2 light"], MeasuredOn(large).Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> MeasuredOn(Site site) =>
        site.Loads.Where(load => LoadCurrents.IsMeasured(site, load)).Select(load => load.Name);
}
