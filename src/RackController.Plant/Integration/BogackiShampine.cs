using System.Numerics;
using System.Runtime.InteropServices;
using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// Integrates a small system by the embedded Runge-Kutta pair of third and second order of Bogacki and Shampine (Appl. Math.
/// Lett. 2, 1989, 321-325, from memory), with the step chosen from the difference of the two. Explicit, because tanks, weirs and
/// orifices of a rack are not stiff; sums of the state that the rates keep are kept to rounding. Allocates nothing after
/// construction.
/// <para>
/// Its steps depend on the system alone. It never shortens one because somebody wants to look: between the ends of the step in hand
/// the state lies on a <see cref="Curve"/>. So a run that is looked at ten times a second and one that is hardly looked at are the
/// same run, bit for bit.
/// </para>
/// </summary>
internal sealed class BogackiShampine
{
    private const double SmallestStepS = 0.01;
    private const double FirstStepS = 0.5;

    // A reason to look up at all: so long ahead, a room may have warmed and a crop may have drunk.
    private const double LargestStepS = 3600;

    // The usual guards of step control, common practice: aim a tenth short of the step that would just do, and let one step
    // neither shrink nor grow by more than five times.
    private const double Caution = 0.9;
    private const double MostChange = 5;

    private readonly IRates system;
    private readonly int parts;
    private readonly double[] start;
    private readonly double[] end;
    private readonly double[] trial;
    private readonly double[] error;
    private readonly double[] startRates;
    private readonly double[] k2;
    private readonly double[] k3;
    private readonly double[] endRates;
    private double stepS = FirstStepS;
    private bool startRatesKnown;

    /// <summary>Begins at a state.</summary>
    /// <param name="system">What is integrated.</param>
    /// <param name="state">Its state; copied.</param>
    /// <param name="at">The time of that state.</param>
    public BogackiShampine(IRates system, ReadOnlySpan<double> state, MonotonicTime at)
    {
        this.system = system;
        parts = state.Length;
        start = Room();
        end = Room();
        trial = Room();
        error = Room();
        startRates = Room();
        k2 = Room();
        k3 = Room();
        endRates = Room();
        state.CopyTo(start);
        state.CopyTo(end);
        From = at;
        To = at;
    }

    /// <summary>Where the step in hand begins.</summary>
    public MonotonicTime From { get; private set; }

    /// <summary>Where it ends; where it begins before the first step.</summary>
    public MonotonicTime To { get; private set; }

    /// <summary>Length of the step in hand, s.</summary>
    public double LengthS => PlantTime.Seconds(From, To);

    /// <summary>How many steps were taken.</summary>
    public long Steps { get; private set; }

    /// <summary>State at the end of the step in hand.</summary>
    public ReadOnlySpan<double> End => end.AsSpan(0, parts);

    /// <summary>How one part of the state runs over the step in hand.</summary>
    /// <param name="part">Its place in the state.</param>
    public Curve Curve(int part) =>
        Plant.Curve.Through(start[part], startRates[part], end[part], endRates[part], LengthS);

    /// <summary>The state at a time within the step in hand.</summary>
    /// <param name="time">The time.</param>
    /// <param name="state">Where it goes.</param>
    public void At(MonotonicTime time, Span<double> state)
    {
        if (time == To)
        {
            End.CopyTo(state);
            return;
        }

        var share = Share(time);
        for (var i = 0; i < state.Length; i++)
        {
            state[i] = Curve(i).At(share);
        }
    }

    /// <summary>One part of the state at a time within the step in hand: the same number, to the bit.</summary>
    /// <param name="time">The time.</param>
    /// <param name="part">Its place in the state.</param>
    public double At(MonotonicTime time, int part) => time == To ? end[part] : Curve(part).At(Share(time));

    /// <summary>The share of the step in hand that has passed at a time.</summary>
    public double Share(MonotonicTime time) => PlantTime.Seconds(From, time) / LengthS;

    /// <summary>Something outside the state changed, such as a relay, or the state itself was changed: goes on from there with a
    /// short step.</summary>
    /// <param name="state">The state to go on from.</param>
    /// <param name="at">Its time.</param>
    public void Restart(ReadOnlySpan<double> state, MonotonicTime at)
    {
        state.CopyTo(start);
        state.CopyTo(end);
        From = at;
        To = at;
        startRatesKnown = false;
        stepS = FirstStepS;
    }

    /// <summary>Takes the next step.</summary>
    public void Step()
    {
        TakeTheEndAsTheStart();
        double size;
        double takenS;
        do
        {
            takenS = PlantTime.Seconds(From, To = PlantTime.After(From, stepS));
            Try(takenS);
            size = system.Error(error.AsSpan(0, parts));
            stepS = takenS * Math.Clamp(Caution / Math.Cbrt(Math.Max(size, 1e-6)), 1 / MostChange, MostChange);
            stepS = Math.Clamp(stepS, SmallestStepS, LargestStepS);
        }
        while (size > 1 && takenS > 2 * SmallestStepS);
        Invariant.Holds(double.IsFinite(size), "the state of a rack stays finite");
        startRatesKnown = !system.Settle(end.AsSpan(0, parts));
        Steps++;
    }

    private void TakeTheEndAsTheStart()
    {
        From = To;
        end.CopyTo(start, 0);
        if (startRatesKnown)
        {
            endRates.CopyTo(startRates, 0);
        }
        else
        {
            Rates(start, startRates);
        }
    }

    private void Try(double step)
    {
        var state = Lanes(start);
        var tried = Lanes(trial);
        var a = Lanes(startRates);
        var b = Lanes(k2);
        var c = Lanes(k3);
        var d = Lanes(endRates);
        for (var i = 0; i < state.Length; i++)
        {
            tried[i] = state[i] + step / 2 * a[i];
        }

        Rates(trial, k2);
        for (var i = 0; i < state.Length; i++)
        {
            tried[i] = state[i] + step * 3 / 4 * b[i];
        }

        Rates(trial, k3);
        var reached = Lanes(end);
        for (var i = 0; i < state.Length; i++)
        {
            reached[i] = state[i] + step / 9 * (2 * a[i] + 3 * b[i] + 4 * c[i]);
        }

        Rates(end, endRates);
        var wrong = Lanes(error);
        for (var i = 0; i < state.Length; i++)
        {
            wrong[i] = step / 72 * (-5 * a[i] + 6 * b[i] + 8 * c[i] - 9 * d[i]);
        }
    }

    private void Rates(double[] at, double[] rates) => system.Rates(at.AsSpan(0, parts), rates.AsSpan(0, parts));

    // Several numbers at a time: the same sums in the same order, number for number, whatever the machine's width.
    private static Span<Vector<double>> Lanes(double[] numbers) => MemoryMarshal.Cast<double, Vector<double>>(numbers.AsSpan());

    private double[] Room() => new double[(parts + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count];
}
