namespace RackController.Plant.Tests;

public class SaltsTests
{
    [Fact]
    public void ConductivityCountsSalts()
    {
        // 1 mS/cm is 640 ppm on one of the three scales of meters; from memory.
        Assert.Equal(640, Salts.GPerM3At(1));
        Assert.Equal(1.5, Salts.MsPerCm(Salts.GPerM3At(1.5)), 1e-12);
        Assert.Equal(0.64, Salts.SalinityGPerKg(Salts.GPerM3At(1)), 1e-12);
    }

    [Fact]
    public void AConcentrationIsThatOfWhatIsThere()
    {
        Assert.Equal(800, Salts.GPerM3(160, 0.2), 1e-9);
        Assert.Equal(0, Salts.GPerM3(0, 0));
        Assert.True(double.IsFinite(Salts.GPerM3(1e-6, 0)));
    }

    [Fact]
    public void ACropLeavesSomeOfTheSaltsBehind()
    {
        var taken = Salts.TakenUpGPerS(1e-8, 640);
        Assert.InRange(taken, 0, 1e-8 * 640 * 0.99);
        Assert.Equal(taken * 2, Salts.TakenUpGPerS(1e-8, 1280), 1e-15);
    }

    [Fact]
    public void MixingGoesFromTheStrongerToTheWeaker()
    {
        Assert.True(Salts.MixedOutGPerS(0.004, 1200, 640, 1) > 0);
        Assert.True(Salts.MixedOutGPerS(0.004, 400, 640, 1) < 0);
        Assert.Equal(0, Salts.MixedOutGPerS(0.004, 1200, 640, 0));
    }
}
