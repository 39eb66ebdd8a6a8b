using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// The one place that says in words why a load would like to be on or off. The phrases can follow "because" and serve
/// live status, the events and the question why.
/// </summary>
internal static class DemandWords
{
    /// <summary>A demand in words.</summary>
    /// <param name="demand">What the load would like.</param>
    /// <param name="load">The load.</param>
    /// <param name="plan">Its run plan, if it has one.</param>
    /// <param name="site">The site, for its zone and the names of sensors.</param>
    /// <param name="clock">The time by the schedule, and whether it is sure.</param>
    /// <param name="now">The time that it is said.</param>
    /// <param name="phaseBegan">Since when the flood cycle is in its phase.</param>
    public static string Of(
        in Demand demand, Load load, RunPlan? plan, Site site, ScheduleClock clock, MonotonicTime now, MonotonicTime phaseBegan)
    {
        var today = clock.TimeAt(now);
        var at = demand.Until == Instant.MinValue ? "" : site.Zone.SayTime(demand.Until, today);
        var until = at.Length == 0 ? "" : clock.IsTrusted ? $" until {at}" : $" until about {at}, as the time is not sure";
        return demand.Cause switch
        {
            DemandCause.Lit => at.Length == 0
                ? $"the schedule always lights tier {load.TierNumber}"
                : $"the schedule lights tier {load.TierNumber}{until}",
            DemandCause.Dark => at.Length == 0
                ? $"the schedule never lights tier {load.TierNumber}"
                : $"the schedule keeps tier {load.TierNumber} dark{until}",
            DemandCause.TierOutOfUse => load.TierNumber is { } tier ? $"tier {tier} is out of use" : "every tier is out of use",
            DemandCause.Always => "it runs always",
            DemandCause.CycleOn => $"its cycle has it on{until}",
            DemandCause.CycleOff => $"its cycle has it off{until}",
            DemandCause.ReadingHigh or DemandCause.ReadingLow or DemandCause.ReadingUnknown =>
                ByReading(demand, plan as RunByReading, site),
            DemandCause.NoFlood => at.Length == 0 ? "no flood is scheduled" : $"no flood is due{until}",
            DemandCause.FloodWaiting =>
                Waiting(demand, load, site.Zone.SayTime(clock.TimeAt(phaseBegan), today)),
            DemandCause.FloodFilling => site[load.Rack].Schedule.Floods.Fill is FillUntilFull
                ? $"a flood fills the trays until they are full,{until} at the latest"
                : $"a flood fills the trays{until}",
            DemandCause.FloodSoaking => $"the water is held at depth{until}",
            DemandCause.FloodDraining => demand.State == SwitchState.On
                ? $"the trays drain back through the supply{until}"
                : $"the trays drain{until}",
            DemandCause.Stopped => "a person stopped the rack",
            DemandCause.ProofTest => "a proof test needs it so",
            _ => throw new InvariantBrokenException($"there are words for the cause {demand.Cause}"),
        };
    }

    private static string Waiting(in Demand demand, Load load, string since) =>
        load.Kind != LoadKind.Pump ? $"the flood of {since} is due, and valves open before the pump starts"
        : demand.State == SwitchState.On ? $"the flood of {since} is due"
        : $"the flood of {since} is due, and the valves open first";

    private static string ByReading(in Demand demand, RunByReading? plan, Site site)
    {
        Invariant.Holds(plan is not null, "only a load that runs by a reading gives a reading as its cause");
        var sensor = site[plan.Sensor];
        var unit = site.Units.Of(sensor.Kind == SensorKind.AirHumidity ? "%" : "°C");
        return demand.Cause switch
        {
            DemandCause.ReadingHigh => $"it runs until {sensor.Name} falls below {unit.Limit(plan.OffBelow)}",
            DemandCause.ReadingLow => $"it rests until {sensor.Name} rises above {unit.Limit(plan.OnAbove)}",
            _ => $"{sensor.Name} is unknown, and {(demand.State == SwitchState.On ? "on" : "off")} is its safe state",
        };
    }
}
