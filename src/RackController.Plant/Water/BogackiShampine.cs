namespace RackController.Plant;

/// <summary>
/// Integrates a small system by the embedded Runge-Kutta pair of third and second order of Bogacki and Shampine (Appl. Math.
/// Lett. 2, 1989, 321-325, from memory), with the step chosen from the difference of the two. Explicit, because tanks, weirs and
/// orifices of a rack are not stiff; sums of the state that the rates keep are kept to rounding. Allocates nothing after
/// construction.
/// </summary>
internal sealed class BogackiShampine
{
    private const double SmallestStepS = 0.01;
    private const double LargestStepS = 120;
    private const double FirstStepS = 0.5;

    // The usual guards of step control, common practice: aim a tenth short of the step that would just do, and let one step
    // neither shrink nor grow by more than five times.
    private const double Caution = 0.9;
    private const double MostChange = 5;

    private readonly IRates system;
    private readonly double[] state;
    private readonly double[] trial;
    private readonly double[] error;
    private readonly double[] k1;
    private readonly double[] k2;
    private readonly double[] k3;
    private readonly double[] k4;
    private double stepS = FirstStepS;
    private bool ratesKnown;

    public BogackiShampine(IRates system, double[] state)
    {
        this.system = system;
        this.state = state;
        trial = new double[state.Length];
        error = new double[state.Length];
        k1 = new double[state.Length];
        k2 = new double[state.Length];
        k3 = new double[state.Length];
        k4 = new double[state.Length];
    }

    /// <summary>How fast the state changes now.</summary>
    public ReadOnlySpan<double> CurrentRates
    {
        get
        {
            if (!ratesKnown)
            {
                system.Rates(state, k1);
                ratesKnown = true;
            }

            return k1;
        }
    }

    /// <summary>Something outside the state changed, such as a relay: rates are found anew and steps begin short.</summary>
    public void Restart()
    {
        ratesKnown = false;
        stepS = FirstStepS;
    }

    /// <summary>Moves the state on.</summary>
    /// <param name="seconds">By how long.</param>
    public void Advance(double seconds)
    {
        var left = seconds;
        while (left > 0)
        {
            var step = Math.Min(stepS, left);
            Try(step);
            var size = system.Error(error);
            if (size > 1 && step > SmallestStepS)
            {
                stepS = Math.Max(SmallestStepS, step * Math.Max(1 / MostChange, Caution / Math.Cbrt(size)));
                continue;
            }

            left -= step;
            trial.CopyTo(state, 0);
            k4.CopyTo(k1, 0);
            ratesKnown = !system.Settle(state);
            var grown = step * Math.Clamp(Caution / Math.Cbrt(Math.Max(size, 1e-6)), 1 / MostChange, MostChange);
            stepS = Math.Min(LargestStepS, step < stepS ? Math.Max(stepS, grown) : grown);
        }
    }

    private void Try(double step)
    {
        _ = CurrentRates;
        for (var i = 0; i < state.Length; i++)
        {
            trial[i] = state[i] + step / 2 * k1[i];
        }

        system.Rates(trial, k2);
        for (var i = 0; i < state.Length; i++)
        {
            trial[i] = state[i] + step * 3 / 4 * k2[i];
        }

        system.Rates(trial, k3);
        for (var i = 0; i < state.Length; i++)
        {
            trial[i] = state[i] + step / 9 * (2 * k1[i] + 3 * k2[i] + 4 * k3[i]);
        }

        system.Rates(trial, k4);
        for (var i = 0; i < state.Length; i++)
        {
            error[i] = step / 72 * (-5 * k1[i] + 6 * k2[i] + 8 * k3[i] - 9 * k4[i]);
        }
    }
}
