using RackController.Model;

namespace RackController.Plant;

/// <summary>
/// One rack as a system that moves: its state at a time, how the state changes under the inputs that act, and where it will be
/// within the step in hand. Everything that runs by itself runs in here, in one integration, so that water, air, warmth and what is
/// dissolved agree on every moment.
/// </summary>
internal sealed class RackDynamics : IRates
{
    private const double ToleranceK = 1e-3;
    private const double VapourToleranceKPa = 1e-3;
    private const double OxygenToleranceGPerM3 = 1e-3;
    private const double SaltToleranceG = 1e-2;

    private readonly Rack rack;
    private readonly RackInputs acting;
    private readonly BogackiShampine integrator;
    private readonly double[] state;
    private readonly double[] perTolerance;
    private MonotonicTime stateAt;

    public RackDynamics(Rack rack, PlantStart start)
    {
        this.rack = rack;
        Layout = new RackLayout(rack.Tiers.Length);
        acting = new RackInputs(rack.Tiers.Length);
        Water = new RackWater(rack, Layout, acting);
        Climate = new RackClimate(rack, Layout, acting, start);
        Solutes = new RackSolutes(rack, Layout, acting, start);
        state = new double[Layout.Length];
        Water.Fill(state, rack.Reservoir.NormalVolumeL / Litres.PerM3 * start.ReservoirShare);
        Climate.Fill(state, start);
        Solutes.Fill(state, start);
        perTolerance = PerTolerance(start.LevelToleranceMm / 1000);
        Now = start.At;
        stateAt = start.At;
        integrator = new BogackiShampine(this, state, start.At);
    }

    public RackLayout Layout { get; }

    public RackWater Water { get; }

    /// <summary>Depth of water in the reservoir now, m.</summary>
    public double ReservoirDepthM => Water.ReservoirDepthM(Part(Layout.Reservoir));

    /// <summary>Depth of water in a tray now, m.</summary>
    /// <param name="index">Tier, from 0.</param>
    public double TrayDepthM(int index) => Water.TrayDepthM(index, Part(RackLayout.Tray(index)));

    public RackClimate Climate { get; }

    public RackSolutes Solutes { get; }

    /// <summary>The time that it stands at.</summary>
    public MonotonicTime Now { get; private set; }

    /// <summary>Until when it is known how the state runs: the end of the step in hand, later than <see cref="Now"/>.</summary>
    public MonotonicTime KnownUntil
    {
        get
        {
            if (integrator.To <= Now)
            {
                integrator.Step();
            }

            return integrator.To;
        }
    }

    /// <summary>How many steps the integration took.</summary>
    public long Steps => integrator.Steps;

    /// <summary>The state now, laid out by <see cref="Layout"/>.</summary>
    public ReadOnlySpan<double> State
    {
        get
        {
            if (stateAt != Now)
            {
                integrator.At(Now, state);
                stateAt = Now;
            }

            return state;
        }
    }

    /// <summary>One part of the state now, for whoever needs no other.</summary>
    /// <param name="part">Its place in the state.</param>
    public double Part(int part) => stateAt == Now ? state[part] : integrator.At(Now, part);

    /// <summary>How one part of the state runs over the step in hand.</summary>
    /// <param name="part">Its place in the state.</param>
    public Curve Curve(int part)
    {
        _ = KnownUntil;
        return integrator.Curve(part);
    }

    /// <summary>Length of the step in hand, s.</summary>
    public double StepS => integrator.LengthS;

    /// <summary>The share of the step in hand that has passed now.</summary>
    public double Share => ShareAt(Now);

    /// <summary>The share of the step in hand that has passed at a time within it.</summary>
    public double ShareAt(MonotonicTime time) => integrator.Share(time);

    /// <summary>The first nanosecond at which so large a share of the step in hand has passed.</summary>
    public MonotonicTime TimeAt(double share) =>
        MonotonicTime.Earlier(integrator.To, PlantTime.After(integrator.From, share * StepS));

    /// <summary>How fast one part of the state changes now, per second.</summary>
    /// <param name="part">Its place in the state.</param>
    public double Rate(int part) => Curve(part).Rate(StepS).At(Share);

    /// <summary>Goes on in time, not beyond <see cref="KnownUntil"/>.</summary>
    public void MoveTo(MonotonicTime time) => Now = time;

    /// <summary>Goes on in time, however far, under the same inputs.</summary>
    public void AdvanceTo(MonotonicTime time)
    {
        while (Now < time)
        {
            MoveTo(MonotonicTime.Earlier(time, KnownUntil));
        }
    }

    /// <summary>From now on other inputs act, unless they are the same.</summary>
    public void Take(RackInputs inputs)
    {
        if (!acting.IsSame(inputs))
        {
            _ = State;
            acting.CopyFrom(inputs);
            Water.Prime(state);
            Water.Settle(state);
            integrator.Restart(state, Now);
        }
    }

    /// <summary>Water comes into the reservoir from outside, as from a hose, or leaves it.</summary>
    /// <param name="volume">m3; negative leaves, at most what is there.</param>
    public void Bring(double volume)
    {
        _ = State;
        Climate.Bring(state, Math.Max(0, volume));
        Solutes.Bring(state, volume);
        Pour(Layout.Reservoir, volume);
    }

    /// <summary>Pours water into a store, which changes in nothing else.</summary>
    /// <param name="store">Where it is in the state.</param>
    /// <param name="volume">m3; negative takes away.</param>
    public void Pour(int store, double volume)
    {
        _ = State;
        state[store] += volume;
        Water.Settle(state);
        integrator.Restart(state, Now);
    }

    /// <summary>The air of the room is at once another.</summary>
    /// <param name="celsius">Temperature.</param>
    /// <param name="vapourKPa">Vapour pressure, kPa.</param>
    public void SetRoom(double celsius, double vapourKPa)
    {
        _ = State;
        state[Layout.RoomC] = celsius;
        state[Layout.RoomVapourKPa] = vapourKPa;
        integrator.Restart(state, Now);
    }

    /// <inheritdoc/>
    public void Rates(ReadOnlySpan<double> at, Span<double> rates)
    {
        rates.Clear();
        Climate.Rates(at, rates, Water);
        Water.Rates(at, rates);
        Solutes.Rates(at, rates, Water);
    }

    /// <inheritdoc/>
    public double Error(ReadOnlySpan<double> error)
    {
        var worst = 0.0;
        for (var part = 0; part < error.Length; part++)
        {
            worst = Math.Max(worst, Math.Abs(error[part]) * perTolerance[part]);
        }

        return double.IsFinite(worst) ? worst : double.PositiveInfinity;
    }

    /// <inheritdoc/>
    public bool Settle(Span<double> at) => Water.Settle(at);

    // Sums are as exact as the stores that they are the sums of, and the room runs straight.
    private double[] PerTolerance(double levelM)
    {
        var allowed = new double[Layout.Length];
        Array.Fill(allowed, double.PositiveInfinity);
        allowed[Layout.Reservoir] = levelM * rack.Reservoir.AreaM2;
        allowed[Layout.WaterC] = ToleranceK;
        allowed[Layout.Salts] = SaltToleranceG;
        allowed[Layout.Oxygen] = OxygenToleranceGPerM3 * rack.Reservoir.NormalVolumeL / Litres.PerM3;
        for (var index = 0; index < rack.Tiers.Length; index++)
        {
            allowed[RackLayout.Tray(index)] = levelM * Water.TrayAreaM2(index, 0);
            allowed[Layout.Media(index)] = levelM * Water.TrayAreaM2(index, 0);
            allowed[Layout.AirC(index)] = ToleranceK;
            allowed[Layout.VapourKPa(index)] = VapourToleranceKPa;
            allowed[Layout.TraySalts(index)] = SaltToleranceG;
            allowed[Layout.MediaSalts(index)] = SaltToleranceG;
        }

        return [.. allowed.Select(one => 1 / one)];
    }
}
