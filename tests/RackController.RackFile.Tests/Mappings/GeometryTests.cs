using RackController.RackFile.Building;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Tests.Mappings;

public sealed class GeometryTests
{
    /// <summary>One point (q, h): head 4/3 h at no flow and no head at 2 q, as src/validate.c of the open EPANET engine (2.3.5)
    /// has it.</summary>
    [Fact]
    public void OneRatedPointMakesACurveOfExponentTwo()
    {
        var curve = PumpCurves.ThroughOnePoint(new PumpPoint(15, 1.8))!;

        Assert.Equal(2.4, curve.ShutOffHeadM, 1e-9);
        Assert.Equal(30, curve.MaxFlowLpm, 1e-9);
        Assert.Equal(2, curve.Exponent);
    }

    /// <summary>The power function of the open EPANET engine: H = h0 - a Q^n with n = ln((h0 - h2) / (h0 - h1)) / ln(q2 / q1).
    /// h0 2.4 m and the points (15, 1.8) and (27, 0.456) give n = 2 and no head at 30 L/min (closed form).</summary>
    [Fact]
    public void ThreePointsMakeTheCurveThatPassesThroughThem()
    {
        var curve = PumpCurves.ThroughThreePoints([new PumpPoint(0, 2.4), new PumpPoint(15, 1.8), new PumpPoint(27, 0.456)])!;

        Assert.Equal(2, curve.Exponent, 1e-9);
        Assert.Equal(30, curve.MaxFlowLpm, 1e-9);
        Assert.Equal(2.4, curve.ShutOffHeadM, 1e-9);
    }

    /// <summary>q = 27.8 r^(5/3) d^(8/3) (scribd.com/document/567525554, quoting Wyly and Eaton, NBS BMS 132) at r = 7/24: 6.47,
    /// 10.51, 22.64 and 66.8 US gal/min (arithmetic).</summary>
    [Theory]
    [InlineData(1.25, 6.47)]
    [InlineData(1.5, 10.51)]
    [InlineData(2, 22.64)]
    [InlineData(3, 66.8)]
    public void ADrainStackCarriesWhatTheStackFormulaSays(double boreIn, double gallonsPerMinute)
    {
        const double litresPerGallon = 3.785411784;
        var computed = RackGeometry.DrainStackCapacityLpm(boreIn * 25.4) / litresPerGallon;
        Assert.Equal(gallonsPerMinute, computed, gallonsPerMinute * 0.001);
    }

    [Theory]
    [InlineData(1, new[] { 450.0 })]
    [InlineData(3, new[] { 450.0, 900, 1350 })]
    [InlineData(5, new[] { 450.0, 720, 990, 1260, 1530 })]
    public void TraysStandEvenlyAndWithinReach(int tiers, double[] heightsMm) =>
        Assert.Equal(heightsMm, Enumerable.Range(1, tiers).Select(number => RackGeometry.TrayHeightMm(number, tiers)));

    [Fact]
    public void BranchesAreThrottledMoreTheLowerTheyAreAndWhatTheFileSaysStays()
    {
        var rack = RackFileReader.Read(Files.Config("demo-four-tier.yaml")).Site!.Racks[0];
        var losses = rack.Tiers.Select(tier => tier.Branch.MinorLossK).ToArray();

        Assert.Equal(losses.OrderDescending(), losses);
        Assert.Equal(SupplyBalance.OpenBranchK, losses[^1], 1e-6);

        var written = Expect.Site(RackFiles.SmallWith("tray: { standpipe: 40 mm }", "branch: { minor-loss: 40 }"));
        Assert.Equal(40, written.Racks[0].Tiers[1].Branch.MinorLossK);
    }
}
