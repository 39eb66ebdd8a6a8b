using RackController.Model;

namespace RackController.Plant.Tests;

/// <summary>Runs the trays of a reference case.</summary>
internal sealed class CaseRun
{
    private readonly TrayCase tray;
    private readonly RackInputs inputs;
    private readonly double startM3;
    private readonly double startPipesM3;

    public CaseRun(TrayCase tray)
    {
        this.tray = tray;
        var rack = CaseRacks.Of(tray);
        startM3 = rack.Reservoir.NormalVolumeL / Litres.PerM3;
        var celsius = TemperatureAt(tray.Supply?.KinematicViscosityM2s ?? Physics.KinematicViscosity(20));
        Water = new RackDynamics(rack, PlantStart.Default with { WaterC = celsius, RoomC = celsius, RoomHumidityPercent = 100 });
        startPipesM3 = Water.State[Water.Layout.Pipes];
        inputs = new RackInputs(tray.Trays.Length);
        for (var index = 0; index < tray.Trays.Length; index++)
        {
            inputs.ValveOpen[index] = tray.Supply is { } supply ? supply.Tiers[index].Open : tray.InflowLpm![index] > 0;
            Water.Pour(RackLayout.Tray(index), tray.Trays[index].VolumeM3(tray.Trays[index].StartDepthM));
        }

        TakePump();
    }

    public RackDynamics Water { get; }

    public double NowS { get; private set; }

    public double PumpedL => Water.State[Water.Layout.Pumped] * Litres.PerM3;

    public double SpilledL => Water.State[Water.Layout.Spilled] * Litres.PerM3;

    /// <summary>How far the reservoir has fallen, m, for what left the pipes: the references give them no volume.</summary>
    public double ReservoirFallM =>
        (startM3 + startPipesM3 - Water.State[Water.Layout.Reservoir] - Water.State[Water.Layout.Pipes]) / tray.Reservoir!.AreaM2;

    public void To(double seconds)
    {
        foreach (var edge in tray.PumpOnS.SelectMany(span => span).Where(edge => edge > NowS && edge < seconds).Order())
        {
            Advance(edge);
        }

        Advance(seconds);
    }

    /// <summary>When each mark is passed in its direction, up to the end of the case, s.</summary>
    public List<double>[] TimesOf(TrayCase.MarkData[] marks)
    {
        const double stepS = 0.5;
        var times = marks.Select(_ => new List<double>()).ToArray();
        while (NowS < tray.LengthS)
        {
            var before = marks.Select(mark => Water.TrayDepthM(mark.Tray) - mark.DepthM).ToArray();
            var at = NowS;
            To(Math.Min(NowS + stepS, tray.LengthS));
            for (var index = 0; index < marks.Length; index++)
            {
                var after = Water.TrayDepthM(marks[index].Tray) - marks[index].DepthM;
                if (marks[index].Rising ? before[index] < 0 && after >= 0 : before[index] > 0 && after <= 0)
                {
                    times[index].Add(at + (NowS - at) * before[index] / (before[index] - after));
                }
            }
        }

        return times;
    }

    private void Advance(double toS)
    {
        Water.AdvanceTo(PlantTime.After(MonotonicTime.Zero, toS));
        NowS = toS;
        TakePump();
    }

    private void TakePump()
    {
        inputs.PumpSpeed = tray.PumpOnS.Any(span => span[0] <= NowS && NowS < span[1]) ? 1 : 0;
        Water.Take(inputs);
    }

    // Viscosity falls strictly with temperature.
    private static double TemperatureAt(double kinematicViscosity)
    {
        var (cold, warm) = (0.0, 60.0);
        while (warm - cold > 1e-6)
        {
            var middle = (cold + warm) / 2;
            (cold, warm) = Physics.KinematicViscosity(middle) > kinematicViscosity ? (middle, warm) : (cold, middle);
        }

        return cold;
    }
}
