using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Which loads draw current, by the one sensor of their circuit: by how much it changes when one of them is switched. So neither
/// nameplates nor the sensor need be exact, since only a change is compared, and with what a load drew when it last switched. Loads are
/// switched on one at a time; where several switch together, only what stands out is judged.
/// <para>What changes between two switchings is suspicious and no more: supplies wander. The value is read only at times that are named
/// on the agenda and just before a switching, so that everybody reads the same.</para>
/// </summary>
internal sealed class StepCurrents : ICurrentJudge
{
    // How often it is looked for what nobody switched; oftener at first, to learn how much the sensor scatters, and while everything
    // is told off, because a current then is that of a welded relay, and a quiet circuit is not quiet for long.
    private static readonly Duration looksEvery = Duration.FromMinutes(5);
    private static readonly Duration learnsEvery = Duration.FromSeconds(10);
    private const int Learns = 30;

    private readonly CircuitId circuit;
    private readonly SensorId sensor;
    private readonly LoadBeliefs loads;

    // By then the next load is on that comes back.
    private readonly Duration comesBack;
    private MonotonicTime settlesAt;
    private MonotonicTime looksAt;
    private double beforeA = double.NaN;
    private double settledA = double.NaN;
    private bool isSettling;
    private bool wasCut;
    private int looks;

    public StepCurrents(Site site, Circuit circuit, SensorId sensor, MonotonicTime start)
    {
        this.circuit = circuit.Id;
        this.sensor = sensor;
        looksAt = start + WireCurrent.Settles;
        loads = new LoadBeliefs(site, circuit);
        var limits = CircuitLimits.Of(site, circuit.Id);
        comesBack = Duration.Max(limits.RestartSpacing, limits.RelayRest);
    }

    public void Look(Facts facts, Agenda agenda)
    {
        var now = facts.Now.Monotonic;
        if (loads.FollowSwitching(facts))
        {
            BeginToSettle(facts);
        }

        FollowContactor(facts);
        if (!facts.IsKnown(sensor) || !facts.Conditions.Io.IsOk)
        {
            // Nor does anybody know where relays are while outputs fail.
            isSettling = false;
            settledA = double.NaN;
            loads.ForgetSwitched();
            loads.Say(facts, isKnown: false);
            return;
        }

        if (now >= (isSettling ? settlesAt : looksAt))
        {
            LookAtValue(facts);
        }

        loads.Say(facts, isKnown: true);
        agenda.Add(isSettling ? settlesAt : looksAt);
    }

    /// <summary>What is believed of a load of the circuit.</summary>
    public LoadBelief Of(Load load) => loads.Of(load.Id);

    /// <summary>Whether it has an opinion of a load now.</summary>
    public bool Knows(LoadBelief load, Facts facts) =>
        facts.IsKnown(sensor) && facts.Conditions.Io.IsOk && load.IsSeen && load.Switched == 0;

    /// <summary>Whether the circuit speaks against a load that is told off and seems to draw current: it carries less than that, or has
    /// shown that it stopped, and has not risen since. Asked at a time that is named on the agenda.</summary>
    public bool Contradicts(LoadBelief load, Facts facts)
    {
        if (!facts.IsKnown(sensor) || !load.IsSeen || loads.IsDeaf)
        {
            return false;
        }

        if (isSettling)
        {
            // It will know in a moment.
            return true;
        }

        var valueA = facts.ValueWhenDue(sensor);
        return valueA < load.DrawsA / 2 || (load.SawEnd && !load.MayBe(valueA - settledA));
    }

    private void BeginToSettle(Facts facts)
    {
        if (!isSettling)
        {
            beforeA = facts.ValueBeforeSwitching(sensor);
            loads.Wander(beforeA - settledA, settledA);
        }

        isSettling = true;
        settlesAt = facts.Now.Monotonic + WireCurrent.Settles;
    }

    // What comes back with the contactor, nobody switched on: it is looked at by itself, before any load is on.
    private void FollowContactor(Facts facts)
    {
        var isCut = facts.WasCut(circuit);
        if (wasCut && !isCut)
        {
            (beforeA, settledA) = (double.NaN, double.NaN);
            isSettling = true;
            settlesAt = facts.Now.Monotonic + WireCurrent.Settles;
        }

        wasCut = isCut;
    }

    private void LookAtValue(Facts facts)
    {
        var now = facts.Now.Monotonic;
        looksAt = now + (looks < Learns || !loads.IsAnyTold ? learnsEvery : looksEvery);
        if (isSettling && facts.TakenAt(sensor) < settlesAt)
        {
            // It may still say what was before.
            settlesAt = now + WireCurrent.Settles;
            return;
        }

        looks = Math.Min(looks + 1, Learns);
        var valueA = facts.ValueWhenDue(sensor);
        if (loads.AnySwitched)
        {
            loads.Judge(valueA - beforeA, valueA, valueA - settledA);
        }
        else
        {
            loads.Wander(valueA - settledA, settledA);
            if (now >= settlesAt + comesBack)
            {
                loads.Rest();
            }
        }

        isSettling = false;
        settledA = valueA;
        loads.Bound(valueA);
    }
}
