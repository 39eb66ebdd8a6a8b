using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>A stretch of light or dark: what a photoperiod says at every instant from <paramref name="From"/> up to, but not
/// at, <paramref name="Until"/>.</summary>
/// <param name="IsLit">Light or dark.</param>
/// <param name="From">Its start; the minimum instant when it has none.</param>
/// <param name="Until">Its end; the maximum instant when it has none.</param>
internal readonly record struct LightWindow(bool IsLit, Instant From, Instant Until)
{
    public bool Holds(Instant time) => From <= time && time < Until;
}

/// <summary>
/// When one tier is lit. Every local day begins a lit stretch at the photoperiod's start, which lasts its length in elapsed
/// time; stretches of neighbouring days that touch or overlap, as they may where the clock is set forward, are one.
/// </summary>
/// <param name="zone">The site's zone.</param>
/// <param name="photoperiod">The tier's photoperiod.</param>
/// <param name="stagger">How much later than the photoperiod says this tier's whole lit stretch lies.</param>
internal sealed class LightCalendar(DateTimeZone zone, Photoperiod photoperiod, Duration stagger)
{
    private static readonly Duration WholeDay = Duration.FromDays(1);

    /// <summary>How many days before an instant a lit stretch that still matters may have begun: where the clock is set
    /// forward over the start itself, the stretches of three days may be one.</summary>
    private readonly int daysBack = (int)((photoperiod.Length + stagger) / WholeDay) + 3;

    /// <summary>When the tier comes on in a lit stretch that belongs to a local day.</summary>
    public Instant Start(LocalDate date) => zone.Happens(date, photoperiod.Start) + stagger;

    /// <summary>When that stretch is over.</summary>
    public Instant End(LocalDate date) => Start(date) + photoperiod.Length;

    /// <summary>The stretch of light or dark that holds an instant.</summary>
    public LightWindow At(Instant time)
    {
        // A day of 25 hours must not leave an hour of darkness in a photoperiod that is always lit.
        if (photoperiod.Length >= WholeDay || photoperiod.Length <= Duration.Zero)
        {
            return new(photoperiod.Length > Duration.Zero, Instant.MinValue, Instant.MaxValue);
        }

        var date = time.InZone(zone).Date.PlusDays(-daysBack);
        var (on, off) = (Start(date), End(date));
        while (true)
        {
            date = date.PlusDays(1);
            var nextOn = Start(date);
            if (nextOn <= off)
            {
                off = Instant.Max(off, End(date));
            }
            else if (time < off)
            {
                return new(true, on, off);
            }
            else if (time < nextOn)
            {
                return new(false, off, nextOn);
            }
            else
            {
                (on, off) = (nextOn, End(date));
            }
        }
    }
}
