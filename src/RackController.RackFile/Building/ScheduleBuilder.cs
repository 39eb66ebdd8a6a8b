using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Building;

/// <summary>Makes a rack's schedule of what was written.</summary>
internal static class ScheduleBuilder
{
    /// <summary>How far below the lowest standpipe a tray counts as full when the file does not say.</summary>
    private const double FullBelowStandpipeMm = 5;

    /// <summary>The photoperiod of every tier, null for a tier without a light.</summary>
    public static ImmutableArray<Photoperiod?> Lights(SchedulePart schedule, ImmutableArray<TierPart> tiers) =>
        [.. tiers.Select((tier, index) => tier.Light is null ? null : schedule.Lights?.Of(index + 1))];

    /// <summary>The flood plan.</summary>
    public static FloodPlan Floods(FloodsPart? floods, ImmutableArray<Tier> tiers)
    {
        if (floods is null)
        {
            return new FloodPlan(
                new NoFloods(), new FillForTime(NodaTime.Duration.Zero), NodaTime.Duration.Zero, NodaTime.Duration.Zero,
                MissedFloods.Skip);
        }

        FillRule fill = floods.Fill.UntilFull
            ? new FillUntilFull(floods.Fill.Limit, floods.Fill.FullDepthMm ?? DefaultFullDepthMm(tiers))
            : new FillForTime(floods.Fill.Limit);
        return new FloodPlan(floods.Times, fill, floods.Soak, floods.Drain, floods.Missed);
    }

    /// <summary>How a fan or aerator runs.</summary>
    /// <param name="load">The load.</param>
    /// <param name="run">As written.</param>
    /// <param name="rack">Its rack.</param>
    /// <param name="sensors">The sensors of the site.</param>
    public static RunPlan Run(LoadId load, RunPart run, RackId rack, ImmutableArray<Sensor> sensors) => run switch
    {
        { On: { } on, Off: { } off } => new RunInCycles(load, on, off),
        { OnAbove: { } above, OffBelow: { } below } => new RunByReading(
            load,
            sensors.Where(sensor => sensor.Rack == rack && sensor.Kind == KindOf(above))
                .MinBy(sensor => sensor.TierNumber ?? 0)!.Id,
            above.Value, below.Value),
        _ => new RunAlways(load),
    };

    /// <summary>What sensor a reading of the air comes from.</summary>
    public static SensorKind KindOf(AirReading reading) =>
        reading.IsHumidity ? SensorKind.AirHumidity : SensorKind.AirTemperature;

    private static double DefaultFullDepthMm(ImmutableArray<Tier> tiers) =>
        tiers.Min(tier => tier.Tray.StandpipeHeightMm) - FullBelowStandpipeMm;
}
