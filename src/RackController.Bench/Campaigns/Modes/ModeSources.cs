namespace RackController.Bench;

/// <summary>Where parts are known to fail in the ways of the catalogue. Each says how far it may be trusted: an address that was
/// read, <c>from memory</c>, or <c>common practice, no source</c>.</summary>
internal static class ModeSources
{
    public const string Jammed =
        "common practice, no source: scale, roots and debris jam a float's guide; its reed contact sticks";

    public const string LatchLost =
        "common practice, no source: a float is wired without a relay that latches, or the latch's spring has worn";

    public const string Turned = "common practice, no source: the dial of a time relay is knocked, or its time drifts with age and heat";

    public const string Open = "common practice, no source: a float jams low, a reed breaks, a wire corrodes through";

    public const string Slimed = "common practice, no source: slime and roots let a float follow the water late";

    public const string Bounces = "contacts bounce and waves move floats: dotnet/iot issues 674 and 2260";

    public const string RopeWet =
        "common practice, no source: a rope that was wet once stays damp in its braid, or its wires touch";

    public const string RopeDead = "common practice, no source: a rope dries out in dust, or its plug works loose";

    public const string SenseWelded =
        "relay contacts that fail to open: IEC 61810-2 counts it as a malfunction, from memory";

    public const string SenseOpen = "relay contacts that fail to close: IEC 61810-2 counts it as a malfunction, from memory";

    public const string LineLost =
        "inputs of a board stop answering: dotnet/iot issues 2404 and 2134 (lost expander interrupts)";

    public const string Drifts = "data sheets of analogue sensors state a drift over time and temperature, from memory";

    public const string Noise = "common practice, no source: long unscreened wires beside mains pick up noise";

    public const string BusSilent =
        "bus errors and nodes that vanish: dotnet/iot issues 832 and 163, raspberrypi/linux 2099";

    public const string KeepsOld = "drivers keep the old value after a failed read: source of dotnet/iot Sht3x";

    public const string Checksum = "checksum failures on long wires: dotnet/iot issue 1584";

    public const string OffsetBy = "data sheets state an offset error; a fouled or shifted probe adds to it, from memory";

    public const string ReadsZero = "a broken wire or a dead amplifier reads nothing: common practice, no source";

    public const string Welds =
        "inrush of LED drivers up to 100 times the rated current welds contacts: watt24.com/en/guide/capacitive-load; "
            + "IEC 61810-2 counts failure to open as a malfunction, from memory";

    public const string FailsToClose =
        "burnt or dirty contacts fail to close: IEC 61810-2 counts it as a malfunction, from memory";

    public const string Sluggish =
        "common practice, no source: a rusty armature or a flyback diode across the coil lets go late; timers hang";

    public const string Chatters = "relays chatter when their coil lacks voltage: common practice, no source";

    public const string Dies = "common practice, no source: drivers burn out, windings open, plugs are pulled";

    public const string ValveSticks = "common practice, no source: grit under the seat or a stuck plunger";

    public const string StoneClogs = "common practice, no source: air stones clog with slime and scale, hoses slip off";

    public const string Wears = "common practice, no source: bearings and impellers wear, scale narrows them";

    public const string Seizes = "common practice, no source: roots, grit and scale hold a rotor fast";

    public const string WaterGetsIn =
        "water in a light or pump leaks current to earth: why UL 943 exists; profengineering.com/glossary/gfci";

    public const string Clogs = "common practice, no source: roots, media and algae clog screens, weeps and drains";

    public const string Leaks = "common practice, no source: trays crack, fittings loosen, hoses slip off";

    public const string ByHand = "common practice, no source: a drain left open, a hose left running";

    public const string Grid = "voltage dips, interruptions and low voltage: classified by IEC 61000-4-11, from memory";

    public const string BreakerOpens =
        "a breaker opens by overload or age: UL 489 limits as quoted by optifuse.com/blog/ul-circuit-breakers";

    public const string Nuisance =
        "ground-fault protection opens between 4 and 6 mA: profengineering.com/glossary/gfci; sums of small leaks";

    public const string NoAnswer =
        "reads and writes of lines fail: dotnet/iot issues 811 and 1419, libgpiod after the chip has vanished";

    public const string PowerSupply = "common practice, no source: plugs are pulled and small power supplies sag";

    public const string NoBattery = "a board without a clock battery boots at a wrong time: systemd issues 25457 and 36498";

    public const string WrongTime =
        "a wall clock that jumps or is set wrong by hand: dotnet/runtime issue 122788, systemd 25457";
}
