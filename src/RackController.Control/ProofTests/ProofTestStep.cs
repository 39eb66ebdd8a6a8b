using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>One step of a proof test: how the loads must be told, what somebody does, and what must then be seen.</summary>
/// <param name="Words">What to do, or what to look at.</param>
internal sealed record ProofTestStep(string Words)
{
    /// <summary>How pumps must be. They are waited for and never told, because a test that started one could run it dry.</summary>
    public ImmutableArray<(LoadId Load, SwitchState State)> Pumps { get; init; } = [];

    /// <summary>How other loads are told while the step lasts and the pumps are as they must be, if nothing forbids it.</summary>
    public ImmutableArray<(LoadId Load, SwitchState State)> Loads { get; init; } = [];

    /// <summary>What the readings must show; null where a person must say what was seen.</summary>
    public Func<Facts, bool>? Shows { get; init; }

    /// <summary>Whether whatever the item protects must act at the same time.</summary>
    public bool MustTrip { get; init; }

    /// <summary>Whether the pumps are as the step needs them.</summary>
    public bool HasItsPumps(Facts facts) => AreSo(Pumps, facts);

    /// <summary>Whether everything is as the step needs it.</summary>
    public bool IsReady(Facts facts) => HasItsPumps(facts) && AreSo(Loads, facts);

    /// <summary>How a load is told; null where that is nothing to this step.</summary>
    public SwitchState? StateOf(LoadId load)
    {
        foreach (var (each, state) in Loads)
        {
            if (each == load)
            {
                return state;
            }
        }

        return null;
    }

    private static bool AreSo(ImmutableArray<(LoadId Load, SwitchState State)> loads, Facts facts)
    {
        foreach (var (load, state) in loads)
        {
            if (facts.WasOn(load) != (state == SwitchState.On))
            {
                return false;
            }
        }

        return true;
    }
}

/// <summary>How long the parts of a proof test may take.</summary>
/// <param name="Step">How long until a step shows what it must, once the rack is ready for it.</param>
/// <param name="Wait">How long the rack may take to be ready.</param>
internal readonly record struct ProofTestPace(Duration Step, Duration Wait);
