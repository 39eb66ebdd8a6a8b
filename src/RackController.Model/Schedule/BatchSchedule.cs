using System.Collections.Immutable;
using NodaTime;

namespace RackController.Model;

/// <summary>What the batches on a rack ask of its schedule beside what the grower wrote. The program puts it into the rack file, so that
/// the file alone still says what the rack does.</summary>
/// <param name="FloodsPerDay">How many floods a day, spread over the light: 0 for none to 96; null for those of the schedule.</param>
/// <param name="Tiers">How long lights are on; a tier that is missing keeps what the schedule says.</param>
public sealed record BatchSchedule(int? FloodsPerDay, ImmutableArray<TierHours> Tiers)
{
    /// <summary>Asks for nothing.</summary>
    public static readonly BatchSchedule None = new(null, []);

    /// <summary>Whether it asks for nothing.</summary>
    public bool IsNone => FloodsPerDay is null && Tiers.IsEmpty;

    /// <summary>How long the light of a tier is to be on; null where the schedule says.</summary>
    /// <param name="tier">1 at the bottom.</param>
    public Duration? LengthOn(int tier) => Tiers.FirstOrDefault(one => one.Tier == tier)?.Length;

    /// <summary>Whether it asks for the same as another.</summary>
    /// <param name="other">The other.</param>
    public bool IsLike(BatchSchedule other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return FloodsPerDay == other.FloodsPerDay
            && Tiers.OrderBy(one => one.Tier).SequenceEqual(other.Tiers.OrderBy(one => one.Tier));
    }
}

/// <summary>How long the light of a tier is on, whatever the schedule says.</summary>
/// <param name="Tier">1 at the bottom.</param>
/// <param name="Length">How long each day: 0 for dark to 24 h.</param>
public sealed record TierHours(int Tier, Duration Length);

/// <summary>How batches, once they are in the growing book, act on the racks.</summary>
/// <param name="ScheduleFollows">Whether schedules follow by themselves what stands on the tiers; otherwise it is proposed to a person.
/// Default: proposed.</param>
/// <param name="MovesByDate">Whether a batch counts as moved on the day that was planned; otherwise somebody has to say that it was.
/// Default: somebody says so.</param>
public sealed record BatchPolicy(bool ScheduleFollows, bool MovesByDate)
{
    /// <summary>Nothing happens by itself.</summary>
    public static readonly BatchPolicy Default = new(ScheduleFollows: false, MovesByDate: false);
}
