using NodaTime;

namespace RackController.Control;

/// <summary>How many floods have begun since the last local midnight.</summary>
internal sealed class FloodDay
{
    private readonly string key;
    private readonly DateTimeZone zone;
    private Instant begins;
    private Instant ends;
    private long count;

    public FloodDay(string key, DateTimeZone zone, MemoryReader memory, Instant now)
    {
        this.key = key;
        this.zone = zone;
        var lastBegan = memory.WallTime($"{key}/day-of-floods");
        Turn(now);
        count = lastBegan == begins ? memory.Number($"{key}/floods-today") ?? 0 : 0;
    }

    /// <summary>The count at a time by the schedule.</summary>
    public int Count(Instant now) => begins <= now && now < ends ? (int)count : 0;

    /// <summary>A flood begins.</summary>
    public void Began(Instant now)
    {
        if (now < begins || now >= ends)
        {
            Turn(now);
        }

        count++;
    }

    public void Save(MemoryWriter writer)
    {
        writer.Put($"{key}/day-of-floods", begins);
        writer.Put($"{key}/floods-today", count);
    }

    private void Turn(Instant now)
    {
        var date = now.InZone(zone).Date;
        begins = zone.AtStartOfDay(date).ToInstant();
        ends = zone.AtStartOfDay(date.PlusDays(1)).ToInstant();
        count = 0;
    }
}
