using RackController.Model;

namespace RackController.Control;

/// <summary>How small a change of a circuit's current its sensor can be heard to tell, and whether it tells any.</summary>
/// <param name="circuit">The circuit.</param>
internal sealed class CircuitHearing(Circuit circuit)
{
    // Meters of energy resolve a thousandth of their range (data sheets of such circuits, from memory), and the range is the breaker's.
    private const double LeastShareOfBreaker = 0.00125;

    // A change of so many times the mean scatter is none: of a normal distribution less than one in a thousand.
    private const double ScatterMultiple = 4;
    private const double Forgets = 0.1;

    // Noise goes on; a single leap, such as a start, is none, and counts for no more than so many times the least that is told.
    private const double LeapMultiple = 4;

    // By how many times the least that is told a current must change to be heard. What was meant to change by so many times what the
    // sensor resolves, and has not by as much as it resolves, was not heard: a sensor that scatters never says the very same.
    private const double HeardMultiple = 2;
    private const double MeantMultiple = 4;

    // By what share of itself a current may change in one step for the sake of the supply alone: rapid changes of voltage in public
    // networks are generally no more than 5 % (EN 50160, from memory), and lamps draw more or less as it changes.
    private const double SwayShare = 0.05;
    private readonly double resolvedA = ResolvedA(circuit);
    private double scatterA;

    /// <summary>The least change that is told, A: a supply that wanders and a sensor that scatters hide small loads.</summary>
    public double LeastA => Math.Max(resolvedA, ScatterMultiple * scatterA);

    /// <summary>Whether the sensor did not follow when everything was switched off, and has said the same since.</summary>
    public bool IsDeaf { get; private set; }

    /// <summary>The least that a sensor of such a circuit tells, A.</summary>
    public static double ResolvedA(Circuit circuit) => LeastShareOfBreaker * circuit.BreakerA;

    /// <summary>Whether a change is large enough to be one beyond doubt.</summary>
    public bool IsHeard(double changeA) => Math.Abs(changeA) >= HeardMultiple * LeastA;

    /// <summary>Whether a change that nobody meant may be the supply's own.</summary>
    /// <param name="changeA">By how much, A.</param>
    /// <param name="fromA">What flowed before, A.</param>
    public static bool IsSway(double changeA, double fromA) => Math.Abs(changeA) <= SwayShare * fromA;

    /// <summary>Takes a change that nobody meant; not a number where it is unknown.</summary>
    public void Wander(double changeA)
    {
        IsDeaf &= !IsHeard(changeA);
        scatterA += double.IsNaN(changeA) ? 0 : Forgets * (Math.Min(Math.Abs(changeA), LeapMultiple * LeastA) - scatterA);
    }

    /// <summary>Takes a change that was meant.</summary>
    /// <param name="changeA">By how much it has changed, A; not a number where that is unknown.</param>
    /// <param name="expectedA">By how much it should have.</param>
    /// <param name="isAllOff">Whether everything is told off now.</param>
    public void Follow(double changeA, double expectedA, bool isAllOff)
    {
        if (IsHeard(changeA))
        {
            IsDeaf = false;
        }
        else if (isAllOff && Math.Abs(changeA) < resolvedA && Math.Abs(expectedA) >= MeantMultiple * resolvedA)
        {
            IsDeaf = true;
        }
    }
}
