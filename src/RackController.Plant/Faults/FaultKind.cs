namespace RackController.Plant;

/// <summary>What can happen to a simulated rack from outside; <see cref="FaultCatalogue"/> says where, and what its size means.</summary>
public enum FaultKind
{
    /// <summary>A float reads wet whatever the water does.</summary>
    FloatStuckWet,

    /// <summary>A float reads dry whatever the water does.</summary>
    FloatStuckDry,

    /// <summary>A float follows the water late.</summary>
    FloatSlow,

    /// <summary>A float changes to and fro at random.</summary>
    FloatChattering,

    /// <summary>A measured value scatters.</summary>
    SensorNoise,

    /// <summary>A measured value wanders off at a constant rate.</summary>
    SensorDrift,

    /// <summary>A measured value is off by a constant amount.</summary>
    SensorOffset,

    /// <summary>A measuring sensor reads zero, as if it were well, as with a broken wire.</summary>
    SensorReadsZero,

    /// <summary>A sensor gives no new reading; the last one grows old.</summary>
    SensorDropout,

    /// <summary>A sensor keeps giving the value it had, as if it were new.</summary>
    SensorFrozen,

    /// <summary>A sensor's readings arrive damaged.</summary>
    SensorCorrupt,

    /// <summary>A relay's contact stays closed: the load is on whatever it is told.</summary>
    RelayWelded,

    /// <summary>A relay's contact stays open: the load is off whatever it is told.</summary>
    RelayOpen,

    /// <summary>A relay's contact chatters while it should be closed.</summary>
    RelayChattering,

    /// <summary>A relay's contact follows its command late, closing and opening.</summary>
    RelaySluggish,

    /// <summary>A load is dead: it draws nothing though its relay is closed.</summary>
    LoadDead,

    /// <summary>A motor of fan, aerator or pump is held fast: it draws current and moves nothing.</summary>
    MotorSeized,

    /// <summary>A tier valve stays open whatever its coil does.</summary>
    ValveStuckOpen,

    /// <summary>A tier valve stays shut whatever its coil does.</summary>
    ValveStuckShut,

    /// <summary>The air stone or hose of an aerator lets no air through: it runs and nothing bubbles.</summary>
    AirStoneBlocked,

    /// <summary>The contactor upstream of a circuit stays closed whatever it is told, welded or its coil burnt out.</summary>
    ContactorWelded,

    /// <summary>Current leaks from a load to earth while its contact is closed, as where water gets into a light. It may open the
    /// circuit's ground-fault protection, and somebody has to close that again.</summary>
    EarthLeakage,

    /// <summary>The screen before the pump is clogged.</summary>
    ScreenClogged,

    /// <summary>The pump is worn.</summary>
    PumpWorn,

    /// <summary>The pump's rotor is held fast: it draws current and lifts nothing.</summary>
    PumpSeized,

    /// <summary>A tray's weep is blocked.</summary>
    WeepBlocked,

    /// <summary>A tray's standpipe is blocked, or partly so.</summary>
    StandpipeBlocked,

    /// <summary>The drain stack is blocked, or partly so: what it cannot carry stays in the trays.</summary>
    DrainStackBlocked,

    /// <summary>A tray leaks, into the drip tray or onto the floor.</summary>
    TrayLeak,

    /// <summary>The hose between pump and riser is loose or burst, and spills a share of what the pump gives.</summary>
    HoseLoose,

    /// <summary>Water leaves the reservoir at once, as through an opened drain; it goes to waste, not to the floor.</summary>
    ReservoirEmptied,

    /// <summary>Water comes into the reservoir at once, as from a bucket; what does not fit runs over.</summary>
    ReservoirRefilled,

    /// <summary>Somebody mops drip tray and floor of a rack at once: the leak rope dries, what was spilled stays spilled.</summary>
    FloorMopped,

    /// <summary>The wired float in the pump's wire is held down: wet, it opens nothing.</summary>
    FloatCutoutStuck,

    /// <summary>The wired float does not latch: once it is dry the pump's wire closes by itself.</summary>
    FloatCutoutUnlatched,

    /// <summary>Somebody holds the wired float up, as wet, and lets go at the end.</summary>
    FloatCutoutLifted,

    /// <summary>Somebody presses the reset of the wired float at once; still wet, it stays open.</summary>
    FloatCutoutReset,

    /// <summary>The time relay in the pump's wire hangs: it never opens.</summary>
    TimeCutoutStuck,

    /// <summary>The time relay in the pump's wire opens after another time than it should, as its dial was turned.</summary>
    TimeCutoutTurned,

    /// <summary>Somebody holds a float up, or wets a leak rope, and lets go at the end.</summary>
    MovedWet,

    /// <summary>Somebody holds a float down or out of the water, or dries a leak rope, and lets go at the end.</summary>
    MovedDry,

    /// <summary>The supply of a circuit is away, as in an outage.</summary>
    SupplyOutage,

    /// <summary>The voltage of a circuit sinks.</summary>
    BrownOut,

    /// <summary>A circuit's breaker opens; somebody closes it at the end.</summary>
    BreakerTrip,

    /// <summary>A circuit's ground-fault protection opens it for no lasting reason; somebody closes it at the end.</summary>
    GroundFaultTrip,

    /// <summary>Somebody closes a circuit's breaker at once, whatever opened it.</summary>
    BreakerClosed,

    /// <summary>Inputs cannot be read.</summary>
    ReadFails,

    /// <summary>Relays do not take their commands and stay as they are.</summary>
    WriteFails,
}
