using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>What the schedule would like of one tier's light. Remembers the current stretch of light or dark, so that the
/// calendar is asked only when the clock leaves it, in either direction.</summary>
internal sealed class TierLight(int tierNumber, LoadId load, LightCalendar calendar)
{
    private LightWindow window = new(false, Instant.MaxValue, Instant.MaxValue);

    public int TierNumber => tierNumber;

    public LoadId Load => load;

    /// <summary>When the light comes on in the stretch of a local day.</summary>
    public Instant StartOn(LocalDate date) => calendar.Start(date);

    public Demand Update(ScheduleClock clock, bool tierInUse, Agenda agenda)
    {
        if (!tierInUse)
        {
            return Demand.Off(DemandCause.TierOutOfUse);
        }

        if (!window.Holds(clock.Now))
        {
            window = calendar.At(clock.Now);
        }

        agenda.Add(clock.Comes(window.Until));
        Instant? until = window.Until == Instant.MaxValue ? null : window.Until;
        return window.IsLit ? Demand.On(DemandCause.Lit, until) : Demand.Off(DemandCause.Dark, until);
    }
}
