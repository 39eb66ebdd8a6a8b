using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>One load as the sensor of its circuit sees it.</summary>
/// <param name="load">The load.</param>
/// <param name="nameplateA">What it should draw, A.</param>
internal sealed class PlainLoad(Load load, double nameplateA)
{
    private double? measuredA;

    public Load Load { get; } = load;

    /// <summary>What it drew when it last switched alone, between a third and 1.35 times its nameplate; before that by its nameplate,
    /// A.</summary>
    public double DrawsA => measuredA ?? nameplateA;

    /// <summary>What is thought of it.</summary>
    public Flow Flow { get; set; }

    /// <summary>Whether it is told on.</summary>
    public bool IsTold { get; set; } = load.SafeState == SwitchState.On;

    /// <summary>How often it was switched on since the current last stood, less how often off.</summary>
    public int Switched { get; set; }

    /// <summary>What its circuit has lost, for no reason that anybody knows, since it was switched on, A.</summary>
    public double LostA { get; set; }

    /// <summary>Whether a sensor in its own wire speaks.</summary>
    public bool HasOwnWord { get; set; }

    /// <summary>Whether a rise of its circuit is no more than a supply may wander, and somebody else would tell if it were a
    /// pump's.</summary>
    public bool IsExcused(double riseA, double fromA) =>
        Math.Abs(riseA) <= 0.05 * fromA && (HasOwnWord || Load.Kind != LoadKind.Pump);

    /// <summary>Whether its circuit fell when it was last switched off, and has not risen since by what may be its own.</summary>
    public bool SawFall { get; set; }

    /// <summary>Whether what is thought of it was seen while everything was told off, and nothing has changed since by what may be its
    /// own.</summary>
    public bool IsSeenAlone { get; set; }

    /// <summary>Whether it is to show, when it is next told on, that it did not draw current before.</summary>
    public bool MayStayOn { get; set; }

    /// <summary>Whether it, a fan or an aerator, is known to draw current though told off.</summary>
    public bool StaysOn { get; set; }

    /// <summary>Whether it drew nothing when it was last told on.</summary>
    public bool WasDead { get; set; }

    /// <summary>Whether it was told on before the last switchings.</summary>
    public bool WasTold => Switched == 0 ? IsTold : Switched < 0;

    /// <summary>By how much its circuit should have changed for its sake, A.</summary>
    public double ExpectedA => Switched * DrawsA;

    public double DoubtA => Math.Abs(ExpectedA) * (measuredA is null ? 0.35 : 0.1);

    public bool MayBe(double riseA) => riseA >= 0.35 * DrawsA;

    /// <summary>By what share of what it draws, or should draw, another current differs.</summary>
    public double OffAlone(double currentA) =>
        Math.Min(Math.Abs(currentA - DrawsA) / DrawsA, Math.Abs(currentA - nameplateA) / nameplateA);

    public bool IsAir => Load.Kind is LoadKind.Aerator or LoadKind.Fan;

    public void Learn(double changeA) => measuredA = Math.Clamp(changeA, nameplateA / 3, nameplateA * 1.35);
}
