using CsCheck;
using RackController.Bench.Tests.Support;
using RackController.Model;
using RackController.Plant;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Bench.Tests.Advising;

public sealed class FloodAdviceTests
{
    // A typical pump for five tiers, common practice, no source: 20 L/min at 2.25 m.
    private const string TypicalPump = "{ flow: 20 L/min, head: 2.25 m }";

    public static TheoryData<string> DemoFiles() => ["demo-first-rack.yaml", "demo-four-tier.yaml", "demo-three-racks.yaml"];

    [Theory]
    [MemberData(nameof(DemoFiles))]
    public void TheDemoRacksFillBottomFirstAndNothingIsWrong(string file)
    {
        var site = RackFileReader.Read(ShippedFiles.PathTo($"config/{file}")).Site!;
        Assert.All(site.Racks, rack => AssertRight(FloodAdvice.Of(site, rack)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void AnyNumberOfTiersThrottledByDefaultFillsBottomFirst(int tiers)
    {
        var site = SurveyedRacks.Site(tiers, $"{{ flow: {10 * tiers} L/min, head: 3 m }}");
        AssertRight(FloodAdvice.Of(site, site.Racks[0]));
    }

    [Fact]
    public void WideOpenBranchesStarveTheTopAndThrottlingTheLowerOnesCuresIt()
    {
        var advice = Of(5, TypicalPump, "branch: { minor-loss: 14 }");

        Assert.Equal(new FloodFinding(FloodProblem.TierStarved, 5), advice.Survey.Findings[0]);
        Assert.InRange(advice.Survey.Tiers[4].FlowLpm, 0, 0.1 * advice.Survey.Tiers[0].FlowLpm);
        var first = advice.Ways[0];
        Assert.Empty(first.After.Findings);
        Assert.StartsWith("set the minor losses of the branches: tier 1 to ", first.Changes[0], StringComparison.Ordinal);
        var losses = first.After.Rack.Tiers.Select(tier => tier.Branch.MinorLossK).ToList();
        Assert.Equal(losses.OrderDescending(), losses);
        Assert.Equal(14, losses[^1], 0.5);
    }

    [Fact]
    public void APumpTooWeakForTheTopIsReplacedByOneThatFeedsAll()
    {
        var advice = Of(5, "{ flow: 16.5 L/min, head: 1.8 m }", "branch: { minor-loss: 14 }");

        Assert.Contains(new FloodFinding(FloodProblem.TierStarved, 5), advice.Survey.Findings);
        Assert.Contains("use a pump that gives", advice.Ways[0].Changes[0], StringComparison.Ordinal);
        Assert.True(advice.Ways[0].After.Rack.Pump.Curve.ShutOffHeadM > advice.Survey.Rack.Pump.Curve.ShutOffHeadM);
        Assert.Empty(advice.Ways[0].After.Findings);
    }

    [Fact]
    public void ATrayThatGetsTooMuchIsThrottledOrGetsAWiderStandpipe()
    {
        var advice = Of(2, "{ flow: 40 L/min, head: 3 m }", "branch: { minor-loss: 5, bore: 16 mm }", volumeL: 260);

        Assert.All(
            advice.Survey.Findings.Where(finding => finding.Problem == FloodProblem.TrayOverwhelmed),
            finding => Assert.True(advice.Survey.Tiers[finding.TierNumber!.Value - 1].SettledMm >= 65));
        Assert.Contains(advice.Survey.Findings, finding => finding.Problem == FloodProblem.TrayOverwhelmed);
        Assert.NotEmpty(advice.Ways);
        Assert.All(advice.Ways, way => Assert.Empty(way.After.Findings));
        Assert.All(advice.Ways, way => Assert.All(way.After.Tiers, tier => Assert.InRange(tier.SettledMm, 40, 65)));
    }

    [Fact]
    public void AStackTooNarrowIsWidenedByTheStackFormulaOrSparedByThrottling()
    {
        var advice = Of(5, "{ flow: 40 L/min, head: 3 m }", "drain: { capacity: 30 L/min }");

        Assert.Contains(advice.Survey.Findings, finding => finding.Problem == FloodProblem.TrayOverwhelmed);
        var spared = advice.Ways.Single(way => way.After.Rack.Drain.CapacityLpm == 30);
        Assert.True(spared.After.Tiers.Sum(tier => tier.FlowLpm) < 31);
        var widened = advice.Ways.Single(way => way.After.Rack.Drain.CapacityLpm > 30).After.Rack.Drain;

        // Capacity grows as the bore to the power 8/3 (Wyly and Eaton, as the rack file's default has it).
        Assert.Equal(widened.CapacityLpm / 30, Math.Pow(widened.BoreMm / 52.5, 8.0 / 3), 1e-9);
    }

    [Fact]
    public void ASlowWeepGetsItsTimeOrAWiderHole()
    {
        var advice = Of(3, "{ flow: 30 L/min, head: 3 m }", "tray: { weep: 6 mm }");

        Assert.All(advice.Survey.Findings, finding => Assert.Equal(FloodProblem.DrainedTooLate, finding.Problem));
        Assert.StartsWith("give the trays ", advice.Ways[0].Changes[0], StringComparison.Ordinal);
        Assert.StartsWith("drill the weep of tiers 1, 2, 3 to ", advice.Ways[1].Changes[0], StringComparison.Ordinal);
        Assert.All(advice.Ways, way => Assert.Empty(way.After.Findings));
    }

    [Fact]
    public void ATrayWithoutAWeepGetsOneOrABranchThatItRunsBackThrough()
    {
        var advice = Of(2, "{ flow: 20 L/min, head: 3 m }", "tray: { weep: 0 mm }\n    supply: { check-valve: no }");

        Assert.Contains("tiers 1, 2 never empty", FloodProblemWords.Of(advice.Survey));
        Assert.Equal([0.0, 0.0], advice.Ways[1].After.Rack.Tiers.Select(tier => tier.Branch.OutletAboveTrayFloorMm));
        Assert.All(advice.Ways, way => Assert.Empty(way.After.Findings));
    }

    [Fact]
    public void AReservoirThatRunsLowIsFilledHigher()
    {
        var site = SurveyedRacks.Site(2, "{ flow: 20 L/min, head: 3 m }");
        var tank = site.Racks[0].Reservoir;
        var rack = site.Racks[0] with { Reservoir = tank with { NormalVolumeL = 66 } };
        var advice = FloodAdvice.Of(site, rack);

        Assert.Equal(new FloodFinding(FloodProblem.ReservoirTooLow, null), Assert.Single(advice.Survey.Findings));
        Assert.StartsWith("fill the reservoir to ", advice.Ways[0].Changes[0], StringComparison.Ordinal);
        Assert.InRange(advice.Ways[0].After.Rack.Reservoir.NormalVolumeL, 70, tank.CapacityL);
    }

    [Fact]
    public void WhatNoChangeCuresIsSaidPlainly()
    {
        // A pump that lifts 0.9 m cannot be had two and a half times as fast, and tier 2 stands at 3 m.
        var site = SurveyedRacks.Site(2, "{ flow: 20 L/min, head: 3 m }");
        var rack = site.Racks[0];
        rack = rack with
        {
            Pump = rack.Pump with { Curve = new PumpCurve(0.3, 20, 2) },
            Tiers = rack.Tiers.SetItem(1, rack.Tiers[1] with { TrayFloorHeightMm = 3000 }),
        };
        var advice = FloodAdvice.Of(site, rack);

        Assert.Empty(advice.Ways);
        Assert.Contains(FloodWording.Wrong(advice), line => line.Text.StartsWith("Nothing that was tried", StringComparison.Ordinal));
    }

    [Fact]
    public void NoAdviceBringsBackWhatItCures() =>
        Gen.Select(Gen.Int[1, 6], Gen.Double[10, 60], Gen.Double[1.2, 4], Gen.Double[2, 60], Gen.Double[8, 20], Gen.Double[4, 14])
            .Sample(
                (tiers, maxFlowLpm, shutOffHeadM, minorLossK, boreMm, weepMm) =>
                {
                    var site = Sites.OneRack(tiers);
                    var rack = site.Racks[0] with
                    {
                        Pump = site.Racks[0].Pump with { Curve = new PumpCurve(shutOffHeadM, maxFlowLpm, 2) },
                        Tiers =
                        [
                            .. site.Racks[0].Tiers.Select(tier => tier with
                            {
                                Branch = tier.Branch with { MinorLossK = minorLossK, BoreMm = boreMm },
                                Tray = tier.Tray with { WeepBoreMm = weepMm },
                            }),
                        ],
                    };
                    var advice = FloodAdvice.Of(site, rack);
                    var first = advice.Survey.Findings.FirstOrDefault()?.Problem;
                    Assert.All(advice.Ways, way =>
                    {
                        Assert.DoesNotContain(way.After.Findings, finding => finding.Problem <= first);
                        Assert.Equal(way.After.Findings.ToArray(), FloodSurvey.Of(site, way.After.Rack).Findings.ToArray());
                    });
                },
                iter: 25);

    private static FloodAdvice Of(int tiers, string pump, string more, int? volumeL = null)
    {
        var site = SurveyedRacks.Site(tiers, pump, more, volumeL);
        return FloodAdvice.Of(site, site.Racks[0]);
    }

    private static void AssertRight(FloodAdvice advice)
    {
        Assert.Empty(advice.Survey.Findings);
        Assert.Empty(advice.Ways);
        var filled = advice.Survey.Tiers.Where(tier => tier.TakesPart).Select(tier => tier.Filled).ToList();
        Assert.DoesNotContain(null, filled);
        Assert.Equal(filled.Order(), filled);
    }
}
