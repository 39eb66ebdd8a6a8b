namespace RackController.Control;

/// <summary>What a proof test is about. A proof test reveals a hidden failure, one that nothing in the ordinary course of things
/// would show (IEC 61511 (term, from memory)).</summary>
public enum ProofTestKind
{
    /// <summary>A float: moved by hand, it must read both ways, and whatever it protects must act.</summary>
    FloatSwitch,

    /// <summary>The float in the pump's own wire: lifted in a flood, it must stop the pump, and its reset must let it run again. A person
    /// sees it.</summary>
    WiredFloat,

    /// <summary>The time relay in the pump's own wire: turned down, it must stop the pump in a flood. A person sees it.</summary>
    WiredTimeRelay,

    /// <summary>A leak rope: wetted and dried, it must read both ways, and the pump must be forbidden.</summary>
    LeakRope,

    /// <summary>A supply sense: with the breaker opened and closed, it must read both ways, and the circuit must be kept off.</summary>
    SupplySense,

    /// <summary>A current sensor: it must read nothing with everything off, and what the nameplate says with one load on.</summary>
    CurrentSensor,

    /// <summary>A relay: told off, its load must stop; told on, it must run. A person sees it.</summary>
    Relay,
}
