using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Page;

/// <summary>What comes of a proof test, before it begins.</summary>
internal static class ProofTestConsequences
{
    private const string ActsMeanwhile =
        "What it protects acts as always: the pump is held off while it tells of danger, and a latch stays to be reset.";

    private const string InAFlood =
        "It is done in a flood, which you ask for when it says so: no test starts a pump. You say what you saw.";

    /// <summary>It, and how to end it.</summary>
    /// <param name="test">The test.</param>
    /// <param name="load">The load that it is about; null where it is about a sensor.</param>
    public static ImmutableArray<string> Of(ProofTestStatus test, Load? load) =>
    [
        .. test.Kind switch
        {
            ProofTestKind.FloatSwitch =>
                [$"You move the float with {HandsInWords.Rod}, and its reading must follow both ways.", ActsMeanwhile],
            ProofTestKind.LeakRope =>
                ["You wet the rope and dry it, with the rack's plug pulled, and its reading must follow both ways.", ActsMeanwhile],
            ProofTestKind.SupplySense => (string[])
            [
                "You open the breaker of the circuit and close it.",
                "All that draws from it goes off meanwhile, this controller too if it is fed by it.",
                "Afterwards its loads come back one by one.",
            ],
            ProofTestKind.CurrentSensor =>
            [
                "All that it measures goes off, and then a single load on, for up to a minute or two each.",
                "Fans and aerator rest too where it measures them.",
            ],
            ProofTestKind.WiredFloat =>
            [
                InAFlood,
                "You lift the float in the pump's wire with a dry rod or its cord: no hands in the water while the pump may run.",
            ],
            ProofTestKind.WiredTimeRelay => [InAFlood, "You turn the time relay in the pump's wire down for it, and back."],
            ProofTestKind.Relay when load?.Kind == LoadKind.Pump => [InAFlood],
            ProofTestKind.Relay =>
                ["Its load is told off and on while you look. You say what you saw.", "A load that its reason forbids is waited for."],
            _ => throw new InvariantBrokenException($"every proof test has its consequences, {test.Kind} too"),
        },
        "It goes round no interlock, and can be abandoned at any time.",
        $"{HandsInWords.Plug} {HandsInWords.Hold}",
    ];
}
