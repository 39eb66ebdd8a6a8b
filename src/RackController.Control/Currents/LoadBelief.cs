using RackController.Model;

namespace RackController.Control;

/// <summary>What the current of a circuit tells of one of its loads.</summary>
/// <param name="load">The load.</param>
/// <param name="nameplateA">What it draws by its nameplate, A.</param>
internal sealed class LoadBelief(Load load, double nameplateA)
{
    // Nameplates state the most that a load may draw: one third of it is little for a load that works, and half of what was measured is
    // little for a load that works as it did. Common practice, no source.
    private const double LeastShare = 1.0 / 3;
    private const double MostShare = 1.0 / 2;

    // By how much a change may differ from what the load draws and still be taken for its own.
    private const double LikeShare = 0.35;

    // By how much the current of a load may differ from its nameplate, and from what was measured when it last switched.
    private const double NameplateDoubt = 0.35;
    private const double MeasuredDoubt = 0.1;

    private double? measuredA;

    public Load Load => load;

    /// <summary>The sensor in its own wire; null where it has none.</summary>
    public SensorId? Wire { get; init; }

    /// <summary>Whether that speaks, so that nobody need guess by the circuit.</summary>
    public bool HasOwnWord { get; set; }

    /// <summary>What it draws: as measured when it last switched alone, before that by its nameplate, A.</summary>
    public double DrawsA => measuredA ?? nameplateA;

    /// <summary>What is believed of it.</summary>
    public Flow Flow { get; set; }

    /// <summary>Whether it flows for all that is known, or may.</summary>
    public bool IsSuspect => Flow is Flow.Flows or Flow.SeemsToFlow or Flow.MayFlow;

    /// <summary>Whether it was told on at the last look.</summary>
    public bool IsTold { get; set; }

    /// <summary>1 where it was switched on since the current last settled, -1 off, 0 neither.</summary>
    public int Switched { get; set; }

    /// <summary>Whether it was told on before what was switched since the current last settled: the opposite if it was.</summary>
    public bool WasTold => Switched == 0 ? IsTold : !IsTold;

    /// <summary>By how much its circuit has fallen for no known reason since it was switched on, A.</summary>
    public double LostA { get; set; }

    /// <summary>By how much the circuit should have changed for its sake, A.</summary>
    public double ExpectedA => Switched * DrawsA;

    /// <summary>By how much what it draws may be out, A.</summary>
    public double DoubtA => (measuredA is null ? NameplateDoubt : MeasuredDoubt) * Math.Abs(ExpectedA);

    /// <summary>Whether its circuit fell when it was last switched off, and has not risen since by about as much as it draws.</summary>
    public bool SawFall { get; set; }

    /// <summary>Whether what is believed of it was seen while everything on its circuit was told off, and nothing has spoken against it
    /// since: nothing else can have been meant.</summary>
    public bool IsSeenAlone { get; set; }

    /// <summary>Whether its circuit has shown that it stopped.</summary>
    public bool SawEnd => SawFall || (IsSeenAlone && Flow == Flow.Still);

    /// <summary>Whether it draws enough to be told apart on its circuit.</summary>
    public bool IsSeen { get; set; }

    /// <summary>Whether a load that draws so much can be told apart where so little is seen.</summary>
    public static bool IsSeenBy(double drawsA, double leastA) => MostShare * drawsA >= leastA;

    /// <summary>Whether it blows or bubbles: what harms when it is off, and not when it stays on.</summary>
    public bool IsAir => load.Kind is LoadKind.Aerator or LoadKind.Fan;

    /// <summary>Whether it is asked, when it is next told on, whether it did not draw current already.</summary>
    public bool MayStayOn { get; set; }

    /// <summary>Whether it was found to draw current, being a fan or an aerator, though it was told off.</summary>
    public bool StaysOn { get; set; }

    /// <summary>Whether it drew no current when it was last told on.</summary>
    public bool WasDead { get; set; }

    /// <summary>Whether it may turn out to stay on.</summary>
    public bool CanStayOn => IsAir && !StaysOn && !WasDead;

    /// <summary>Whether it followed its switching.</summary>
    /// <param name="missingA">What the circuit's change lacks of the change of all loads that were switched, towards this one's, A.</param>
    /// <param name="doubtA">By how much that may be out, A.</param>
    /// <returns>Whether it did; null where that cannot be told.</returns>
    public bool? Followed(double missingA, double doubtA)
    {
        var share = Math.Max(LeastShare, doubtA / DrawsA);
        return share > MostShare ? null : missingA < (1 - share) * DrawsA;
    }

    /// <summary>Whether a change for no known reason is about as much as it draws.</summary>
    public bool IsLike(double changeA) => IsSeen && IsAbout(changeA, DrawsA);

    /// <summary>Whether a current is about as much as another.</summary>
    public static bool IsAbout(double currentA, double drawsA) => Math.Abs(currentA - drawsA) <= LikeShare * drawsA;

    /// <summary>Whether the supply's own changes excuse it from a rise. A pump that nothing else can tell of is never excused.</summary>
    /// <param name="riseA">By how much, A.</param>
    /// <param name="fromA">What flowed before, A.</param>
    public bool IsExcused(double riseA, double fromA) =>
        (HasOwnWord || load.Kind != LoadKind.Pump) && CircuitHearing.IsSway(riseA, fromA);

    /// <summary>Whether so much of a rise may be its own.</summary>
    public bool MayBe(double riseA) => riseA >= LikeShare * DrawsA;

    /// <summary>Whether it may be among what was lost.</summary>
    public bool MayBePartOf(double lostA) => (1 - LikeShare) * DrawsA <= lostA;

    /// <summary>Whether what a circuit carries while everything is told off is about as much as it draws, or as its nameplate says: what
    /// was measured last may have been of another that stopped at that moment.</summary>
    public bool IsLikeAlone(double valueA) => IsSeen && OffAlone(valueA) <= LikeShare;

    /// <summary>By what share of what it draws that differs.</summary>
    public double OffAlone(double valueA) =>
        Math.Min(Math.Abs(valueA - DrawsA) / DrawsA, Math.Abs(valueA - nameplateA) / nameplateA);

    /// <summary>Whether such a change is more like what it draws than like what another does.</summary>
    public bool IsLiker(double changeA, LoadBelief other) => Math.Abs(changeA - DrawsA) < Math.Abs(changeA - other.DrawsA);

    /// <summary>Whether as much as it draws was lost since it was switched on.</summary>
    public bool WasLost => LostA >= (1 - LikeShare) * DrawsA;

    /// <summary>It switched alone, and the circuit changed by so much; far more than its nameplate says was something else.</summary>
    public void Learn(double changeA) => measuredA = Math.Clamp(changeA, nameplateA * LeastShare, nameplateA * (1 + NameplateDoubt));
}
