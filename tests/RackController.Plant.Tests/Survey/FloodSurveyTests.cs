using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests.Survey;

/// <summary>What a survey says, held to reference cases and closed forms.</summary>
public class FloodSurveyTests
{
    // The area and the film left of the tray of the reference cases, in SI.
    private const double AreaM2 = 1.12 * 0.64;
    private const double DrainedM = 0.003;

    public static TheoryData<string> RunningCases() =>
        [.. SupplyCase.All.Where(supply => supply.Value.Pump.Running != false && supply.Value.CheckValves != false
            && supply.Value.Tiers.All(tier => tier.SurfaceHeightM is null)).Select(supply => supply.Key)];

    [Theory]
    [MemberData(nameof(RunningCases))]
    public void FlowsAreThoseThatTheEpanetEngineComputed(string key)
    {
        // The survey's water is at 19 degrees Celsius, that of the cases within a degree of it, and viscosity matters little.
        var supply = SupplyCase.All[key];
        var survey = Of(RackOf(supply));

        Assert.All(survey.Tiers.Zip(supply.Expected.TierFlowLpm), pair =>
            Assert.Equal(pair.Second, pair.First.FlowLpm, Math.Max(0.02, 0.01 * pair.Second)));
    }

    [Fact]
    public void WideOpenBranchesStarveTheTopAndTheSurveySaysSo()
    {
        var supply = SupplyCase.All.Values.Single(one => one.Name == "four-tier-wide-branches-starve-the-top");
        var survey = Of(RackOf(supply));

        var starved = supply.Expected.TierFlowLpm.Index().Where(tier => tier.Item < 0.05).Select(tier => tier.Index + 1);
        Assert.NotEmpty(starved);
        Assert.Subset(Numbers(survey, FloodProblem.TierStarved), starved.ToHashSet());
    }

    [Fact]
    public void TraysSettleWhereTheReferenceFloodLeavesThem()
    {
        var tray = TrayCase.Named("five-trays-fill-soak-drain");
        var survey = Of(CaseRacks.Of(tray));

        // There the reservoir has fallen by half a metre, here it stays full, which pushes a little more over the standpipe.
        var at900S = tray.Expected.DepthM[Array.IndexOf(tray.Expected.SampleS, 900)];
        Assert.All(survey.Tiers.Zip(at900S), pair => Assert.InRange(pair.First.SettledMm, pair.Second * 1000, pair.Second * 1000 + 1.2));
    }

    [Fact]
    public void ASteadyInflowSettlesWhereWeepAndStandpipeCarryIt()
    {
        var tray = TrayCase.Named("steady-inflow-settles-above-the-standpipe");
        var tier = Of(CaseRacks.Of(tray)).Tiers[0];

        Assert.Equal(tray.Expected.ClosedFormFinalDepthM!.Value * 1000, tier.SettledMm, 0.05);
        Assert.Equal(tray.InflowLpm![0], tier.FlowLpm, 0.01);
        Assert.Equal(tray.InflowLpm[0], tier.CarriedLpm, 0.02);
        Assert.False(tier.IsOverwhelmed || tier.IsStarved);
    }

    /// <summary>Without a weep t = A d / Q.</summary>
    [Fact]
    public void ATrayWithoutAWeepIsFullAsSoonAsItsVolumeHasCome()
    {
        var tier = Of(Rack(inflowLpm: 8, weepM: 0)).Tiers[0];

        Assert.Equal(AreaM2 * 0.9 * 0.0445 / (8 / 60_000.0), tier.Filled!.Value.TotalSeconds, 0.5);
        Assert.Null(tier.Drained);
    }

    /// <summary>A weep holds h = (Q / (Cd a sqrt(2 g)))^2, and drains it in t = 2 A (sqrt h - sqrt h0) / (Cd a sqrt(2 g)).</summary>
    [Fact]
    public void ATrayThatItsWeepKeepsLowIsStarvedAndDrainsAsTheOrificeSays()
    {
        var survey = Of(Rack(inflowLpm: 2, weepM: 0.0095, fill: Duration.FromHours(2)));
        var perRootDepth = 0.62 * Math.PI * 0.0095 * 0.0095 / 4 * Math.Sqrt(2 * 9.80665);
        var depthM = Math.Pow(2 / 60_000.0 / perRootDepth, 2);

        Assert.Equal(depthM * 1000, survey.Tiers[0].SettledMm, 0.05);
        Assert.Equal([1], Numbers(survey, FloodProblem.TierStarved));
        var drainedS = 2 * AreaM2 * (Math.Sqrt(depthM) - Math.Sqrt(DrainedM)) / perRootDepth;
        Assert.Equal(drainedS, survey.Tiers[0].Drained!.Value.TotalSeconds, 0.005 * drainedS);
        Assert.Equal(perRootDepth * Math.Sqrt(0.9 * 0.0445) * 60_000, survey.Tiers[0].HoldsFullLpm, 1e-6);
    }

    /// <summary>Over the rim at h runs Q - drains = C L h^1.5 with C 1.7 and L the perimeter.</summary>
    [Fact]
    public void AStandpipeThatIsTooNarrowLetsTheWaterOverTheRim()
    {
        var survey = Of(Rack(inflowLpm: 40, weepM: 0.0095));
        var tier = survey.Tiers[0];

        Assert.Equal([1], Numbers(survey, FloodProblem.TrayOverwhelmed));
        var overLpm = 1.7 * 2 * (1.12 + 0.64) * Math.Pow((tier.SettledMm - 85) / 1000, 1.5) * 60_000;
        Assert.Equal(40, tier.CarriedLpm + overLpm, 0.1);
    }

    [Fact]
    public void AHighFloatBelowTheSettledWaterIsReached()
    {
        // Weep and the orifice of a 26.6 mm standpipe carry 3.0 and 17.1 L/min at 85 mm, less at the float's 65 mm.
        var survey = Of(Rack(inflowLpm: 18, weepM: 0.0095));

        Assert.InRange(survey.Tiers[0].SettledMm, 65, 85);
        Assert.Equal([1], Numbers(survey, FloodProblem.TrayOverwhelmed));
    }

    [Fact]
    public void AStackAtItsLimitLeavesTheLowerTrayToRise()
    {
        var rack = CaseRacks.Of(TrayCase.Named("five-trays-fill-soak-drain"));
        var survey = Of(rack with { Drain = rack.Drain with { CapacityLpm = 25 } });

        // The five get about 35 L/min together: what 25 do not carry must run over a rim, and the highest trays go first.
        Assert.Contains(1, Numbers(survey, FloodProblem.TrayOverwhelmed));
        Assert.True(survey.Tiers[0].StackHoldsBack);
        Assert.False(survey.Tiers[4].StackHoldsBack || survey.Tiers[4].IsOverwhelmed);
        Assert.Equal(25, survey.Tiers.Sum(tier => tier.CarriedLpm), 0.01);
    }

    [Fact]
    public void AReservoirThatTheTraysEmptyRunsLow()
    {
        // Filled to 60 mm above the low float, it has 24 L to give, and two trays take about 30 L each to their standpipes.
        var site = Sites.OneRack().WithRack(rack => rack with { Reservoir = rack.Reservoir with { NormalVolumeL = 48 } });
        var survey = FloodSurvey.Of(site, site.Racks[0]);

        Assert.Contains(new FloodFinding(FloodProblem.ReservoirTooLow, null), survey.Findings);
        Assert.Equal(60, survey.LowestWorkingMm);

        // At the first flow it would take so long; the flow falls with the level, and weeps give some back.
        var atFirstFlowMin = 24 / survey.Tiers.Sum(tier => tier.FlowLpm);
        Assert.InRange(survey.RunsLow!.Value.TotalMinutes, atFirstFlowMin, 1.2 * atFirstFlowMin);
    }

    [Fact]
    public void ATierOutOfUseTakesPartOnlyWithoutAValve()
    {
        var site = Sites.OneRack(3);
        var all = FloodSurvey.Of(site, site.Racks[0]);
        var valved = FloodSurvey.Of(site, Resting(site.Racks[0], tier => tier));
        var valveless = FloodSurvey.Of(site, Resting(site.Racks[0], tier => tier with { Valve = null }));

        Assert.False(valved.Tiers[2].TakesPart);
        Assert.Equal(0, valved.Tiers[2].FlowLpm);
        Assert.True(valved.Tiers[0].FlowLpm > all.Tiers[0].FlowLpm);
        Assert.DoesNotContain(valved.Findings, finding => finding.TierNumber == 3);
        Assert.Equal(all.Tiers.Select(tier => tier.FlowLpm), valveless.Tiers.Select(tier => tier.FlowLpm));
    }

    [Fact]
    public void WithoutAWeepATrayDrainsOnlyThroughABranchThatEndsBelowItsWaterAndAnOpenPump()
    {
        var held = Of(Weepless(hasCheckValve: true, outletMm: 0));
        var high = Of(Weepless(hasCheckValve: false, outletMm: 70));
        var drained = Of(Weepless(hasCheckValve: false, outletMm: 0));

        Assert.Equal([1, 2], Numbers(held, FloodProblem.DrainedTooLate));
        Assert.Equal([1, 2], Numbers(high, FloodProblem.DrainedTooLate));
        Assert.All(drained.Tiers, tier => Assert.NotNull(tier.Drained));
    }

    [Fact]
    public void AFillUntilFullEndsWithTheLastTrayThatCanTell()
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(8), 40), Soak = Duration.FromMinutes(1) },
        });
        site = site with { Sensors = site.Sensors.Add(FullFloat(site, tierNumber: 1)) };
        var survey = FloodSurvey.Of(site, site.Racks[0]);

        // The float of tier 1 stands where the tray counts as filled, so both are the same moment, to a look.
        Assert.InRange(survey.FillEnds - survey.Tiers[0].Filled!.Value, Duration.Zero, Duration.FromSeconds(2));
        Assert.Equal(survey.FillEnds + Duration.FromMinutes(1), survey.PumpRun);
        Assert.Empty(Numbers(survey, FloodProblem.FilledTooLate));
    }

    [Fact]
    public void AShortFillAndAShortDrainAreFound()
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with
            {
                Fill = new FillForTime(Duration.FromMinutes(1)),
                Drain = Duration.FromMinutes(5),
            },
        });
        var survey = FloodSurvey.Of(site, site.Racks[0]);

        Assert.Equal([1, 2], Numbers(survey, FloodProblem.FilledTooLate));
        Assert.Equal([1, 2], Numbers(survey, FloodProblem.DrainedTooLate));
    }

    private static Sensor FullFloat(Site site, int tierNumber) => site.Sensors[0] with
    {
        Id = new SensorId(site.Sensors.Length),
        Name = $"north/tier {tierNumber} full float",
        Kind = SensorKind.TrayFullFloat,
        TierNumber = tierNumber,
        HeightMm = site.Racks[0].Tier(tierNumber).Tray.FilledMm,
    };

    private static Rack Resting(Rack rack, Func<Tier, Tier> change) =>
        rack with { Tiers = rack.Tiers.SetItem(2, change(rack.Tiers[2]) with { InUse = false }) };

    private static Rack Weepless(bool hasCheckValve, double outletMm)
    {
        var rack = Sites.OneRack().Racks[0];
        return rack with
        {
            Supply = rack.Supply with { HasCheckValve = hasCheckValve },
            Tiers =
            [
                .. rack.Tiers.Select(tier => tier with
                {
                    Tray = tier.Tray with { WeepBoreMm = 0 },
                    Branch = tier.Branch with { OutletAboveTrayFloorMm = outletMm },
                }),
            ],
        };
    }

    // One tray of the reference cases with a constant inflow.
    private static Rack Rack(double inflowLpm, double weepM, Duration? fill = null)
    {
        var tray = TrayCase.Named("steady-inflow-settles-above-the-standpipe");
        var rack = CaseRacks.Of(tray with
        {
            InflowLpm = [inflowLpm],
            Trays = [tray.Trays[0] with { Weep = new TrayCase.WeepData(weepM, 0.62) }],
        });
        var floods = rack.Schedule.Floods;
        return rack with
        {
            Schedule = rack.Schedule with
            {
                Floods = floods with { Fill = new FillForTime(fill ?? floods.Fill.Limit), Drain = Duration.FromHours(1) },
            },
        };
    }

    private static Rack RackOf(SupplyCase supply)
    {
        var tray = TrayCase.Named("steady-inflow-settles-above-the-standpipe").Trays[0];
        var floors = supply.Tiers.Select((_, index) => supply.Segments.Skip(1).Take(index).Sum(segment => segment.LengthM)).ToList();
        var rack = CaseRacks.Of(new TrayCase(
            supply.Name,
            new TrayCase.SupplyData(
                supply.RoughnessMm, supply.KinematicViscosityM2s, supply.CheckValves, supply.Pump, supply.Segments, supply.Tiers),
            new TrayCase.ReservoirData(1), [.. floors.Select(floorM => tray with { FloorM = floorM })], [], null, null, 0, null!));
        return rack with
        {
            Tiers = [.. rack.Tiers.Zip(supply.Tiers, (tier, data) => tier with { InUse = data.Open })],
        };
    }

    private static FloodSurvey Of(Rack rack)
    {
        var site = Sites.OneRack(rack.Tiers.Length).WithRack(_ => rack);
        return FloodSurvey.Of(site, site.Racks[0]);
    }

    private static HashSet<int> Numbers(FloodSurvey survey, FloodProblem problem) =>
        [.. survey.Findings.Where(finding => finding.Problem == problem).Select(finding => finding.TierNumber!.Value)];
}
