using NodaTime;
using RackController.Bench;
using RackController.Model;

namespace RackController.Verbs;

/// <summary>A rack's floods in words.</summary>
internal static class FloodWords
{
    /// <summary>When.</summary>
    /// <param name="rack">The rack.</param>
    public static string Times(Rack rack) => rack.Schedule.Floods.Times switch
    {
        FloodsAt at => $"{at.Times.Length} a day, at {string.Join(", ", at.Times.Select(time => $"{time:HH:mm}"))}",
        FloodsEvery every =>
            $"{every.Count} a day, every {Spans.Words(every.Interval)} from {every.Start:HH:mm} "
            + $"for {Spans.Words(every.Length)}",
        FloodsOverPhotoperiod over => $"{over.Count} a day, spread over the light",
        NoFloods => "never",
        _ => throw new InvariantBrokenException("every way to time floods has its words"),
    };

    /// <summary>How.</summary>
    /// <param name="plan">The plan.</param>
    public static string Cycle(FloodPlan plan)
    {
        var limit = Spans.Words(plan.Fill.Limit);
        var fill = plan.Fill is FillUntilFull ? $"fill until full, at most {limit}" : $"fill {limit}";
        return $"{fill}, soak {Words(plan.Soak)}, drain {Words(plan.Drain)}";
    }

    private static string Words(Duration length) => length == Duration.Zero ? "none" : Spans.Words(length);
}
