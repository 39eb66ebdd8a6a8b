namespace RackController.Plant;

/// <summary>
/// When a breaker of some standard trips. Its thermal part is a body warmed by the square of the current, first order:
/// heat' = (i^2 - heat) / T with i the current as a multiple of the rating; it trips when the heat passes its limit. Its magnetic
/// part trips at once.
/// <para>
/// Only published points bound it, and each edge runs through those of its side. UL 489: holds 100 %, trips at 135 % within 1 h
/// (up to 50 A) and at 200 % within 2 min (up to 30 A; optifuse.com/blog/ul-circuit-breakers); above that 2 h, 4 min to 50 A and
/// 6 min to 100 A (from memory). IEC 60898-1: no trip at 1.13, trip at 1.45 within 1 h (se.com FAQ FA369327); type C magnetic at
/// 5 to 10 times (filipinoengineer.com 2024/01); 2.55 times trips in 1 to 60 s, above 32 A in 1 to 120 s (from memory). The rest
/// is a model: UL 489 sets neither an earliest time nor a magnetic part; 10 s at 200 % and 10 to 20 times are common practice, no
/// source.
/// </para>
/// </summary>
/// <param name="HeatLimit">Heat that it bears for ever, as the square of a multiple of the rating.</param>
/// <param name="TimeConstantS">T, s.</param>
/// <param name="MagneticMultiple">Multiple of the rating at which it trips at once.</param>
internal readonly record struct BreakerCurve(double HeatLimit, double TimeConstantS, double MagneticMultiple)
{
    private const double HourS = 3600;

    /// <summary>The curve of a circuit's breaker: UL 489 on 100 to 127 V, IEC 60898-1 type C above.</summary>
    /// <param name="voltageV">The circuit's voltage.</param>
    /// <param name="ratedA">The breaker's rating: 1 to 63 A.</param>
    /// <param name="edge">Which end of the standard's band.</param>
    public static BreakerCurve Of(double voltageV, double ratedA, BreakerEdge edge) =>
        (SupplyPractice.IsNorthAmerican(voltageV), edge) switch
        {
            (true, BreakerEdge.Slow) => TrippingBy(
                (1.35, ratedA <= 50 ? HourS : 2 * HourS), (2, ratedA <= 30 ? 120 : ratedA <= 50 ? 240 : 360), magnetic: 20),
            (true, _) => Holding(1.00, (2, 10), magnetic: 10),
            (false, BreakerEdge.Slow) => TrippingBy((1.45, HourS), (2.55, ratedA <= 32 ? 60 : 120), magnetic: 10),
            (false, _) => Holding(1.13, (2.55, 1), magnetic: 5),
        };

    /// <summary>How long until it trips at a constant current, s; infinite when it holds.</summary>
    /// <param name="heat">Heat it starts with, as the square of a multiple of the rating.</param>
    /// <param name="multiple">Current as a multiple of the rating.</param>
    public double SecondsToTrip(double heat, double multiple)
    {
        var end = multiple * multiple;
        return multiple >= MagneticMultiple ? 0
            : end <= HeatLimit ? double.PositiveInfinity
            : heat >= HeatLimit ? 0
            : TimeConstantS * Math.Log((end - heat) / (end - HeatLimit));
    }

    /// <summary>Its heat after a while at a constant current.</summary>
    /// <param name="heat">Heat it starts with.</param>
    /// <param name="multiple">Current as a multiple of the rating.</param>
    /// <param name="seconds">How long.</param>
    public double HeatAfter(double heat, double multiple, double seconds)
    {
        var end = multiple * multiple;
        return end + (heat - end) * Math.Exp(-seconds / TimeConstantS);
    }

    // Holds a multiple for ever, and when cold trips at a higher one after its time.
    private static BreakerCurve Holding(double multiple, (double Multiple, double Seconds) trips, double magnetic)
    {
        var limit = multiple * multiple;
        return new BreakerCurve(limit, TimeConstant(limit, trips), magnetic);
    }

    // Trips when cold at two multiples after their times. The later time moves the limit a little below the square of its
    // multiple, by a ten thousandth at most, so a few rounds bring both times together.
    private static BreakerCurve TrippingBy(
        (double Multiple, double Seconds) late, (double Multiple, double Seconds) soon, double magnetic)
    {
        var end = late.Multiple * late.Multiple;
        var limit = end;
        var timeConstantS = TimeConstant(limit, soon);
        for (var round = 0; round < 4; round++)
        {
            limit = end * (1 - Math.Exp(-late.Seconds / timeConstantS));
            timeConstantS = TimeConstant(limit, soon);
        }

        return new BreakerCurve(limit, timeConstantS, magnetic);
    }

    private static double TimeConstant(double heatLimit, (double Multiple, double Seconds) trips)
    {
        var end = trips.Multiple * trips.Multiple;
        return trips.Seconds / Math.Log(end / (end - heatLimit));
    }
}
