using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How sensors that measure a value fail.</summary>
internal static class MeasuringModes
{
    private static readonly (Duration, Duration) untilRepaired = (Duration.FromMinutes(5), Duration.FromHours(8));
    private static readonly (Duration, Duration) noisyFor = (Duration.FromMinutes(2), Duration.FromHours(1));

    // Each kind with its unit and a size that is plainly wrong for it without being absurd.
    private static readonly (SensorKind Kind, string Words, string Unit, double Wrong)[] kinds =
    [
        (SensorKind.ReservoirLevel, "reservoir level", "mm", 20),
        (SensorKind.TrayLevel, "tray level", "mm", 10),
        (SensorKind.PumpFlow, "pump flow", "L/min", 2),
        (SensorKind.CircuitCurrent, "circuit current", "A", 0.5),
        (SensorKind.PumpCurrent, "pump current", "A", 0.2),
        (SensorKind.WaterTemperature, "water temperature", "K", 3),
        (SensorKind.AirTemperature, "air temperature", "K", 3),
        (SensorKind.AirHumidity, "air humidity", "%", 10),
        (SensorKind.LightLevel, "light level", "lx", 4000),
    ];

    /// <summary>The modes.</summary>
    public static IEnumerable<FaultMode> All => kinds.SelectMany(one => Of(one.Kind, one.Words, one.Unit, one.Wrong));

    private static IEnumerable<FaultMode> Of(SensorKind kind, string words, string unit, double wrong)
    {
        var targets = FaultTarget.OfSensors(kind);
        var sizes = new FaultSizes(wrong / 4, wrong * 4, wrong, unit);
        var rates = sizes with { Unit = $"{unit}/h" };
        FaultMode Mode(FaultKind fault, string how, string source) =>
            FaultMode.Of(fault, $"{words} {how}", FaultFamily.Measuring, targets, untilRepaired, source);
        yield return FaultMode.Of(
            FaultKind.SensorNoise, $"{words} noisy", FaultFamily.Measuring, targets, noisyFor, ModeSources.Noise) with
        {
            Sizes = sizes,
        };
        yield return Mode(FaultKind.SensorDrift, "drifts up", ModeSources.Drifts) with { Sizes = rates };
        yield return Mode(FaultKind.SensorDrift, "drifts down", ModeSources.Drifts) with { Sizes = rates, IsNegative = true };
        yield return Mode(FaultKind.SensorOffset, "reads high", ModeSources.OffsetBy) with { Sizes = sizes };
        yield return Mode(FaultKind.SensorOffset, "reads low", ModeSources.OffsetBy) with { Sizes = sizes, IsNegative = true };
        yield return Mode(FaultKind.SensorReadsZero, "reads zero", ModeSources.ReadsZero);
        yield return Mode(FaultKind.SensorDropout, "falls silent", ModeSources.BusSilent);
        yield return Mode(FaultKind.SensorFrozen, "frozen", ModeSources.KeepsOld);
        yield return Mode(FaultKind.SensorCorrupt, "garbled", ModeSources.Checksum);
    }
}
