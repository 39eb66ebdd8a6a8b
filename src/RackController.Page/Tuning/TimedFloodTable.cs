using System.Collections.Immutable;
using RackController.Bench;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Floods with their times as a table.</summary>
internal static class TimedFloodTable
{
    /// <summary>Puts floods into rows, newest first.</summary>
    /// <param name="site">The site.</param>
    /// <param name="rack">The rack.</param>
    /// <param name="floods">Its floods, oldest first, each with its time.</param>
    public static RecordedFloods Of(Site site, Rack rack, ImmutableArray<TimedFlood> floods)
    {
        var marks = floods.SelectMany(flood => flood.Times.Select(time => (time.Mark.TierNumber, time.Mark.Passing))).Distinct()
            .Order().ToList();
        var rests = floods.Any(flood => !flood.Run.Resting.IsEmpty);
        return new RecordedFloods(
            null, [.. new FloodLog(site, rack).Lacking()],
            [
                .. marks.Select(mark => $"Tier {mark.TierNumber} {(mark.Passing == FloodPassing.Rising ? "fills" : "drains")}"),
                .. rests ? ["Valves shut"] : Array.Empty<string>(),
            ],
            [
                .. floods.Reverse().Select(flood => new TableRowView(
                    PageWords.Date(flood.At!.Value, site.Zone),
                    [
                        .. marks.Select(mark => Cell(flood, mark)),
                        .. rests ? [string.Join(", ", flood.Run.Resting.Numbers.Select(tier => $"tier {tier}"))] : Array.Empty<string>(),
                    ])),
            ],
            floods.Length >= MeasuredRack.LeastFloods);
    }

    private static string Cell(TimedFlood flood, (int TierNumber, FloodPassing Passing) mark) =>
        flood.Times.FirstOrDefault(time => (time.Mark.TierNumber, time.Mark.Passing) == mark) is { } time
            ? WatchTimes.Words(time.AfterS)
            : "";
}
