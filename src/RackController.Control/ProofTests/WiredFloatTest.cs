using RackController.Model;

namespace RackController.Control;

/// <summary>The proof test of the float in the pump's own wire. It works without the controller, which sees nothing of it: nobody knows
/// that it still does until somebody lifts it while the pump runs, or whether it latches: one that closes again as it dries pumps a drip
/// tray full a little at a time. A flood of which no water is seen trips <c>no-fill</c>, so the float is left alone while a fill begins
/// and held up for seconds only.</summary>
internal static class WiredFloatTest
{
    /// <summary>The test of a rack's wired float.</summary>
    /// <param name="rack">A rack that has one.</param>
    public static ProofTestItem Of(Rack rack)
    {
        var limits = rack.Limits;
        var inAFlood = (string words) => new ProofTestStep(words) { Pumps = [(rack.Pump.Load, SwitchState.On)] };
        return new ProofTestItem(
            FloatCutout.NameAt(rack), ProofTestKind.WiredFloat, Place.Of(rack), limits.FloatTestInterval,
            new ProofTestPace(limits.TestStepWithin, limits.TestStepWithin + limits.PumpRest * 2),
            [
                inAFlood("ask for a flood and let it fill for half a minute: does the pump run?"),
                inAFlood("lift the float in the pump's wire with a dry rod or its cord, for five seconds: does the pump stand still?"),
                inAFlood("let it down, and do not press its reset: does the pump still stand still?"),
                inAFlood("press its reset: does the pump run again?"),
            ]);
    }
}
