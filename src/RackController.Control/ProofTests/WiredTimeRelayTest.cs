using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>The proof test of the time relay in the pump's own wire. It opens on no ordinary day, so nobody knows that it still would
/// until somebody turns it down below the length of a fill. Not shorter than half a minute: of a flood that ends before any water
/// is seen <c>no-fill</c> would think ill.</summary>
internal static class WiredTimeRelayTest
{
    // What it is turned down to, which is waited for in the step.
    private static readonly Duration turnedDownTo = Duration.FromSeconds(30);

    /// <summary>The test of a rack's time relay.</summary>
    /// <param name="rack">A rack that has one.</param>
    public static ProofTestItem Of(Rack rack)
    {
        var limits = rack.Limits;
        var after = rack.TimeCutout!.After.InWords();
        return new ProofTestItem(
            TimeCutout.NameAt(rack), ProofTestKind.WiredTimeRelay, Place.Of(rack), limits.RelayTestInterval,
            new ProofTestPace(turnedDownTo + limits.TestStepWithin, limits.TestStepWithin + limits.PumpRest * 2),
            [
                new ProofTestStep("turn the time relay down to half a minute, and ask for a flood: does the pump run?")
                {
                    Pumps = [(rack.Pump.Load, SwitchState.On)],
                },
                new ProofTestStep("wait for that half minute: does the pump stand still by itself?"),
                new ProofTestStep($"stop the flood, and turn the time relay back: does it show {after}?")
                {
                    Pumps = [(rack.Pump.Load, SwitchState.Off)],
                },
            ]);
    }
}
