using CsCheck;

namespace RackController.Plant.Tests;

public class PipeTests
{
    [Fact]
    public void LaminarLossIsThatOfHagenAndPoiseuille() =>
        // 8 mm, 1 m, 0.5 L/min, nu 1.00337e-6 (Re 1322): 128 nu L Q / (pi g D^4) = 8.48124 mm, closed form.
        Assert.Equal(
            8.48124e-3, new Pipe(1, 0.008, 0, 1.5e-6).Loss(0.5 / 60_000, 1.00337e-6, out _), 1e-8);

    [Fact]
    public void TurbulentPressureDropIsNearThePublishedOne()
    {
        // 10 kg/s, 1000 kg/m3, 1e-5 Pa s, 0.1 m bore, 1 m, smooth: 63.43447 Pa with another turbulent formula, as quoted by the
        // test suite of the library fluids (test_one_phase_dP); Swamee-Jain is within 1 %.
        var head = new Pipe(1, 0.1, 0, 0).Loss(0.01, 1e-8, out _);
        Assert.Equal(63.43447, head * 1000 * 9.80665, 0.63);
    }

    [Fact]
    public void MinorLossIsItsShareOfTheVelocityHead()
    {
        // K V^2 / (2 g) with V = 1 m/s and K = 1.5: 1.5 / 19.6133 m, closed form.
        var area = Math.PI * 0.02 * 0.02 / 4;
        Assert.Equal(1.5 / 19.6133, new Pipe(0, 0.02, 1.5, 0).Loss(area, 1e-6, out _), 1e-12);
    }

    [Fact]
    public void FlowUndoesLossInEveryRegime() =>
        Gen.Double[-4, 2].Select(Gen.Double[0.004, 0.05], Gen.Double[0, 50], Gen.Double[0.01, 5])
            .Sample((exponent, bore, minor, length) =>
            {
                var pipe = new Pipe(length, bore, minor, 1.5e-6);
                var flow = Math.Pow(10, exponent) / 60_000;
                var head = pipe.Loss(flow, 1e-6, out _);
                return Math.Abs(pipe.Flow(head, 1e-6, 0, out _) - flow) <= 1e-8 * flow + 1e-14;
            });

    [Fact]
    public void LossGrowsWithFlowThroughTheTransition()
    {
        var pipe = new Pipe(0.25, 0.008, 6, 1.5e-6);
        var last = 0.0;
        for (var lpm = 0.01; lpm < 10; lpm += 0.01)
        {
            var head = pipe.Loss(lpm / 60_000, 1e-6, out var slope);
            Assert.True(head > last && slope > 0);
            last = head;
        }
    }
}
