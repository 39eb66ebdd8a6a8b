using CsCheck;
using RackController.Model;

namespace RackController.Plant.Tests;

public class SupplyNetworkTests
{
    private const double LpmPerM3PerS = 60_000;

    public static TheoryData<string> Cases() => [.. SupplyCase.All.Keys];

    [Theory]
    [MemberData(nameof(Cases))]
    public void EveryTierGetsTheFlowThatTheEpanetEngineComputed(string key)
    {
        var supply = SupplyCase.All[key];
        var network = supply.Network();

        network.Solve(supply.Lift(), reservoirHeadM: 0, screenLossK: 0, supply.KinematicViscosityM2s);

        for (var tier = 0; tier < supply.Tiers.Length; tier++)
        {
            var expected = supply.Expected.TierFlowLpm[tier];
            Assert.Equal(expected, network.FlowM3PerS[tier] * LpmPerM3PerS, ToleranceLpm(expected));
        }

        var pumpLpm = supply.Expected.PumpFlowLpm;
        Assert.Equal(pumpLpm, network.FlowM3PerS.Sum() * LpmPerM3PerS, supply.Tiers.Length * ToleranceLpm(pumpLpm / supply.Tiers.Length));
    }

    [Fact]
    public void ASolutionDoesNotDependOnWhereTheSolverStarted()
    {
        var cases = SupplyCase.All.Values.ToArray();
        Gen.Int[0, cases.Length - 1].Select(Gen.Double[0.2, 5.0]).Sample((which, factor) =>
        {
            var supply = cases[which];
            var fresh = supply.Network();
            fresh.Solve(supply.Lift(), 0, 0, supply.KinematicViscosityM2s);
            var warm = supply.Network();
            warm.Solve(supply.Lift(), factor, 100 * factor, supply.KinematicViscosityM2s * factor);
            warm.Solve(supply.Lift(), 0, 0, supply.KinematicViscosityM2s);
            return Math.Abs(fresh.FlowM3PerS.Sum() - warm.FlowM3PerS.Sum()) * LpmPerM3PerS < 1e-5;
        });
    }

    // A tangent answers close to a known solution; it must not be told from solving the whole anew.
    [Fact]
    public void AWalkInSmallStepsEndsWhereAFreshSolutionIs() =>
        Ladders.Select(Gen.Double[-0.02, 0.02].Array[20]).Sample((ladder, stepsM) =>
        {
            var walked = ladder.Network();
            var surfaceM = 0.0;
            foreach (var stepM in stepsM)
            {
                surfaceM += stepM;
                walked.Solve(ladder.Lift, surfaceM, 0, Viscosity);
            }

            var fresh = ladder.Network();
            fresh.Solve(ladder.Lift, surfaceM, 0, Viscosity);
            // A ten-thousandth of a litre a minute beside a nanometre of head, to which the whole is solved.
            Assert.All(fresh.FlowM3PerS.Zip(walked.FlowM3PerS), pair => Assert.Equal(pair.First, pair.Second, 1e-4 / LpmPerM3PerS));
        });

    [Fact]
    public void AnyLadderConvergesToFlowsThatBalanceEveryHead() =>
        Ladders.Sample(ladder =>
        {
            var network = ladder.Network();
            network.Solve(ladder.Lift, 0, 0, Viscosity);
            Assert.Equal(ladder.Lift.Head(network.FlowM3PerS.Sum(), Viscosity, out _), ladder.HeadNeeded(network), 1e-6);
        });

    // A pump too weak for any tier holds its column still, even one whose curve leaves its shut-off head upright.
    [Fact]
    public void AWeakPumpHoldsItsColumnWithoutAFlow() =>
        Gen.Select(Gen.Double[0.5, 1.5], Gen.Double[0.03, 0.04].Array[200]).Sample((exponent, surfacesM) =>
        {
            var network = new SupplyNetwork(
                [new Pipe(1.535, 0.03096, 9.96, 1.5e-6), new Pipe(0.3726, 0.03096, 0.697, 1.5e-6)],
                [new Pipe(0.3948, 0.01682, 21.31, 1.5e-6), new Pipe(0.59, 0.01829, 48.86, 1.5e-6)]);
            network.Ends[0] = new BranchEnd(true, 3.0274, 0);
            network.Ends[1] = new BranchEnd(true, 2.45598, 0);
            var lift = PumpLift.Running(new PumpCurve(2.252, 82.23, exponent), 1, hasCheckValve: false);
            foreach (var surfaceM in surfacesM)
            {
                network.Solve(lift, surfaceM, 0, 9.769783250608396E-07);
                Assert.All(network.FlowM3PerS.ToArray(), flow => Assert.Equal(0, flow));
            }
        });

    // All that a branch as wide as a bucket loses is nothing beside its riser, so the riser alone says how much flows.
    [Fact]
    public void AWideBranchGetsWhatItsNarrowRiserCarries()
    {
        var riser = new Pipe(1, 0.012, 10, 1.5e-6);
        var network = new SupplyNetwork([riser], [new Pipe(0.1, 0.2, 0, 1.5e-6)]);
        network.Ends[0] = new BranchEnd(true, 1.5, 0);
        var lift = PumpLift.Running(new PumpCurve(20, 40, 2), 1, hasCheckValve: true);

        network.Solve(lift, 0, 0, Viscosity);

        var flow = network.FlowM3PerS[0];
        Assert.Equal(lift.Head(flow, Viscosity, out _) - 1.5, riser.Loss(flow, Viscosity, out _), 1e-6);
    }

    // Bores from a needle's to a bucket's, in any order and on any riser: what flows must balance by the pipes' own losses.
    [Fact]
    public void EvenTheOddestLadderBalancesEveryHead() =>
        OddLadders.Sample(
            ladder =>
            {
                var network = ladder.Network();
                network.Solve(ladder.Lift, 0, 0, Viscosity);
                var flow = network.FlowM3PerS.Sum();
                if (ladder.HasCheckValve && flow <= 0)
                {
                    Assert.InRange(flow, -1e-11, 0);
                    Assert.True(network.TeeHeadM[0] >= ladder.Lift.ShutOffHeadM - 1e-8);
                    return;
                }

                Assert.Equal(ladder.Lift.Head(flow, Viscosity, out _), ladder.HeadNeeded(network), 1e-6);
            },
            iter: 2000);

    [Fact]
    public void ATierThatThePumpCannotReachGetsNothingAndTheOthersTheirShare()
    {
        var network = new SupplyNetwork(
            [new Pipe(1, 0.02, 5, 1.5e-6), new Pipe(2, 0.02, 0.3, 1.5e-6)],
            [new Pipe(0.25, 0.008, 6, 1.5e-6), new Pipe(0.25, 0.008, 6, 1.5e-6)]);
        network.Ends[0] = new BranchEnd(true, 0.5, 0);
        network.Ends[1] = new BranchEnd(true, 2.5, 0);

        network.Solve(PumpLift.Running(new PumpCurve(1.5, 20, 2), 1, true), 0, 0, Viscosity);

        Assert.True(network.FlowM3PerS[0] > 0);
        Assert.Equal(0, network.FlowM3PerS[1]);
    }

    [Fact]
    public void ACheckValveHoldsTheTraysOfAStoppedPump()
    {
        var network = new SupplyNetwork([new Pipe(1, 0.02, 5, 1.5e-6)], [new Pipe(0.25, 0.008, 6, 1.5e-6)]);
        network.Ends[0] = new BranchEnd(true, 0.5, 1);

        network.Solve(PumpLift.Stopped(new Pipe(0.05, 0.02, 12, 1.5e-6), hasCheckValve: true), 0, 0, Viscosity);

        Assert.InRange(network.FlowM3PerS[0], -1e-11, 0);
    }

    private const double Viscosity = 1.0035e-6;

    private static double ToleranceLpm(double flowLpm) => Math.Max(0.01, 0.005 * Math.Abs(flowLpm));

    private static readonly Gen<Ladder> Ladders =
        from tiers in Gen.Int[1, 8]
        from heights in Gen.Double[0.1, 2.5].Array[tiers]
        from bores in Gen.Double[0.004, 0.02].Array[tiers]
        from losses in Gen.Double[0.5, 200].Array[tiers]
        from open in Gen.Bool.Array[tiers]
        from back in Gen.Bool.Array[tiers]
        from shutOff in Gen.Double[0.3, 6]
        from most in Gen.Double[5, 120]
        from exponent in Gen.Double[1.2, 3]
        from runs in Gen.Bool
        select new Ladder(heights, bores, losses, open, back, shutOff, most, exponent, runs, 0.016);

    private static readonly Gen<double> OddBores = Gen.Double[Math.Log(0.002), Math.Log(0.2)].Select(Math.Exp);

    private static readonly Gen<Ladder> OddLadders =
        from ladder in Ladders
        from bores in OddBores.Array[ladder.Bores.Length]
        from riser in OddBores
        from hasCheckValve in Gen.Bool
        select ladder with { Bores = bores, Riser = riser, HasCheckValve = hasCheckValve };

    private sealed record Ladder(
        double[] Heights, double[] Bores, double[] Losses, bool[] Open, bool[] Back, double ShutOff, double Most,
        double Exponent, bool Runs, double Riser, bool HasCheckValve = false)
    {
        public PumpLift Lift => Runs
            ? PumpLift.Running(new PumpCurve(ShutOff, Most, Exponent), 1, HasCheckValve)
            : PumpLift.Stopped(new Pipe(0.05, 0.016, 12, 1.5e-6), HasCheckValve);

        public SupplyNetwork Network()
        {
            var network = new SupplyNetwork(
                [.. Heights.Select((_, index) => Segment(index))], [.. Bores.Select((_, index) => Branch(index))]);
            for (var index = 0; index < Heights.Length; index++)
            {
                network.Ends[index] = new BranchEnd(Open[index], Heights[index], Back[index] ? 1 : 0);
            }

            return network;
        }

        // Independent of the solver: from the flows it found, up the riser, the head that the first tee needs.
        public double HeadNeeded(SupplyNetwork network)
        {
            var above = network.FlowM3PerS.Sum();
            var head = network.TeeHeadM[0] + Segment(0).Loss(above, Viscosity, out _);
            for (var index = 0; index < Heights.Length; index++)
            {
                var drive = network.TeeHeadM[index] - Heights[index];
                var flow = network.FlowM3PerS[index];
                var held = !Open[index] || (drive < 0 && !Back[index]);
                Assert.Equal(held ? 0 : drive, held ? flow : Branch(index).Loss(flow, Viscosity, out _), 1e-8);
                above -= flow;
                if (index + 1 < Heights.Length)
                {
                    var next = network.TeeHeadM[index] - Segment(index + 1).Loss(above, Viscosity, out _);
                    Assert.Equal(next, network.TeeHeadM[index + 1], 1e-8);
                }
            }

            return head;
        }

        private Pipe Segment(int index) =>
            index == 0 ? new Pipe(1.05, Riser, 7.5, 1.5e-6) : new Pipe(0.3, Riser, 0.3, 1.5e-6);

        private Pipe Branch(int index) => new(0.25, Bores[index], Losses[index], 1.5e-6);
    }
}
