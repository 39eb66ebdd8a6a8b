using RackController.Model;

namespace RackController.Plant.Tests;

public class PumpLiftTests
{
    private const double Lpm = 1.0 / 60_000;

    [Theory]
    // H0 2.4 m through (15, 1.8) and (27, 0.456) L/min gives n = 2 and no head at 30 L/min: the power function of the EPANET
    // engine, numbers closed form.
    [InlineData(0, 2.4)]
    [InlineData(15, 1.8)]
    [InlineData(27, 0.456)]
    [InlineData(30, 0)]
    public void TheCurvePassesThroughItsPoints(double lpm, double head) =>
        Assert.Equal(head, PumpLift.Running(new PumpCurve(2.4, 30, 2), 1, false).Head(lpm * Lpm, 1e-6, out _), 1e-9);

    [Fact]
    public void AWornPumpFollowsTheAffinityLaws()
    {
        // Speed +10 %: head +21 %, kb.eng-software.com pageId 23068780; here the other way, 10 % less speed.
        var worn = PumpLift.Running(new PumpCurve(2.4, 30, 2), 0.9, false);
        Assert.Equal(2.4 * 0.81, worn.Head(0, 1e-6, out _), 1e-12);
        Assert.Equal(0, worn.Head(27 * Lpm, 1e-6, out _), 1e-9);
    }

    [Fact]
    public void AScreenIsShutWhenAllOfItIsClogged()
    {
        Assert.Equal(0, RackPipes.ScreenLossK(0));
        Assert.True(RackPipes.ScreenLossK(0.5) < RackPipes.ScreenLossK(0.9));
        Assert.True(RackPipes.ScreenLossK(1) > 1e11);
    }
}
