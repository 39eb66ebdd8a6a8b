using RackController.Model;

namespace RackController.Plant.Tests;

public class AerationTests
{
    private const double PerHour = 3600;

    [Fact]
    public void AerationApproachesSaturationExponentially()
    {
        // C0 4 mg/L, saturation 9.092, KLa 2 /h, no uptake, after 1 h: 8.4029 mg/L (closed form).
        var water = new AeratedWater(2 / PerHour, 9.092);
        var integrator = new BogackiShampine(water, [4], MonotonicTime.Zero);
        while (integrator.To < MonotonicTime.FromMilliseconds(3_600_000))
        {
            integrator.Step();
        }

        var state = new double[1];
        integrator.At(MonotonicTime.FromMilliseconds(3_600_000), state);
        Assert.Equal(8.4029, state[0], 1e-4);
    }

    [Fact]
    public void AnAeratorBringsItsShareOfAKilowattHour()
    {
        // 0.5 kg/kWh from 0.4 m into water without oxygen: 8 W bring 4 g in an hour. A surface without depth to it is left out.
        const double SurfaceM2 = 0.5;
        var aerated = Aeration.TransferAt20PerS(8, SurfaceM2, 0.4) - Aeration.TransferAt20PerS(0, SurfaceM2, 0.4);
        Assert.Equal(4, aerated * 9.092 * SurfaceM2 * 0.4 * PerHour, 1e-6);
    }

    [Fact]
    public void WarmWaterTakesUpAndUsesOxygenFaster()
    {
        // KLa(T) = KLa(20) 1.024^(T - 20): the temperature page of ecologycenter.us.
        Assert.Equal(Math.Pow(1.024, 10), Aeration.TransferGrowth(30), 1e-5);
        Assert.Equal(1, Aeration.TransferGrowth(20));
        Assert.Equal(Math.Pow(1.047, 6), Aeration.UptakeGrowth(26), 1e-5);
        Assert.Equal(0, Aeration.UptakeAt20GPerM3S(80, 0));
    }

    [Fact]
    public void WithoutItsAeratorAReservoirLosesOxygenOverHours()
    {
        // 210 L under 0.48 m2 with sixteen insert trays at 20 degrees Celsius: tenths of a mg/L an hour, common practice, no source.
        Assert.InRange(Aeration.UptakeAt20GPerM3S(16 / 0.21, 9) * PerHour, 0.1, 0.5);
        Assert.InRange(Aeration.TransferAt20PerS(0, 0.48, 0.44) * PerHour, 0.02, 0.1);
        Assert.InRange(Aeration.TransferAt20PerS(8, 0.48, 0.44) * PerHour, 1, 5);
    }

    private sealed class AeratedWater(double transferPerS, double saturated) : IRates
    {
        public void Rates(ReadOnlySpan<double> state, Span<double> rates) => rates[0] = transferPerS * (saturated - state[0]);

        public double Error(ReadOnlySpan<double> error) => Math.Abs(error[0]) / 1e-6;

        public bool Settle(Span<double> state) => false;
    }
}
