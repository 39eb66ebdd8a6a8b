using RackController.Model;

namespace RackController.Control;

/// <summary>The proof test of the float in the pump's own wire. It works without the controller, which sees nothing of it: nobody knows
/// that it still does until somebody lifts it while the pump runs.</summary>
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
                inAFlood("ask for a flood: does the pump run?"),
                inAFlood("lift the float in the pump's wire and hold it up: does the pump stand still?"),
                inAFlood("let it down and press its reset: does the pump run again?"),
            ]);
    }
}
