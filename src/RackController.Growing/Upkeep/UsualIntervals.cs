using NodaTime;
using RackController.Model;

namespace RackController.Growing;

/// <summary>How long each work of upkeep may wait where a rack file does not say (common practice, no source: begin with these, and
/// write your own once you know your rack). What sheds more is due sooner.</summary>
public static class UsualIntervals
{
    /// <summary>How long a work may wait on a rack: as its file says, else by its media. Null where the file never asks for it.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="work">The work.</param>
    public static UpkeepInterval? Of(Rack rack, UpkeepWork work)
    {
        ArgumentNullException.ThrowIfNull(rack);
        return rack.Upkeep.FirstOrDefault(rule => rule.Work == work) is { } rule
            ? rule.Every
            : Usual(work, MediaShedding.Of(MediaShedding.MostOf(rack)));
    }

    /// <summary>How long a work usually may wait.</summary>
    /// <param name="work">The work.</param>
    /// <param name="shedding">How much the media sheds.</param>
    /// <exception cref="InvariantBrokenException">It is none of the works.</exception>
    public static UpkeepInterval Usual(UpkeepWork work, Shedding shedding) => work switch
    {
        UpkeepWork.Screen => FloodsOrDays(Pick(shedding, 50, 100, 200), Pick(shedding, 14, 28, 56)),
        UpkeepWork.Flush => FloodsOrDays(Pick(shedding, 200, 300, 500), Pick(shedding, 60, 90, 150)),
        UpkeepWork.Reservoir => new UpkeepInterval(null, Pick(shedding, 10, 14, 21), null),
        UpkeepWork.Floats => new UpkeepInterval(null, Pick(shedding, 30, 45, 60), null),
        UpkeepWork.Standpipes => FloodsOrDays(Pick(shedding, 100, 200, 300), Pick(shedding, 30, 60, 90)),
        UpkeepWork.Pump => new UpkeepInterval(null, Pick(shedding, 180, 365, 365), Duration.FromHours(Pick(shedding, 200, 300, 400))),
        _ => throw new InvariantBrokenException($"every work of upkeep has its interval, {work} too"),
    };

    private static UpkeepInterval FloodsOrDays(int floods, int days) => new(floods, days, null);

    private static int Pick(Shedding shedding, int much, int some, int little) => shedding switch
    {
        Shedding.Much => much,
        Shedding.Some => some,
        _ => little,
    };
}
