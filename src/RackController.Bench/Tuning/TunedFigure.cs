using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What of a rack can be fitted.</summary>
public enum TunedPart
{
    /// <summary>The speed at which the pump works as if it turned.</summary>
    Pump,

    /// <summary>What the weep of a tier drains.</summary>
    Weep,

    /// <summary>What all standpipes drain.</summary>
    Standpipe,

    /// <summary>How far the branch of a tier is open.</summary>
    Branch,

    /// <summary>What the screen at the pump's intake loses.</summary>
    Screen,
}

/// <summary>One figure that can be fitted: a share of what the rack file says, or the screen's loss coefficient.</summary>
/// <param name="Part">What it is of.</param>
/// <param name="Tier">Of which tier; null where it is of the whole rack.</param>
public sealed record TunedFigure(TunedPart Part, int? Tier)
{
    /// <summary>All that was told of a rack, what is of the whole rack first.</summary>
    /// <param name="measured">What was measured of it.</param>
    public static IEnumerable<TunedFigure> Of(MeasuredRack measured)
    {
        ArgumentNullException.ThrowIfNull(measured);
        (TunedFigure Figure, MeasuredFigure? Value)[] all =
        [
            (new TunedFigure(TunedPart.Pump, null), measured.PumpSpeed),
            (new TunedFigure(TunedPart.Screen, null), measured.ScreenLossK),
            (new TunedFigure(TunedPart.Standpipe, null), measured.Standpipe),
            .. measured.Tiers.Select(tier => (new TunedFigure(TunedPart.Weep, tier.Number), tier.Weep)),
            .. measured.Tiers.Select(tier => (new TunedFigure(TunedPart.Branch, tier.Number), tier.Branch)),
        ];
        return all.Where(one => one.Value is not null).Select(one => one.Figure);
    }

    /// <summary>It in words: <c>the weep of tier 2</c>.</summary>
    public string Words => Part switch
    {
        TunedPart.Pump => "the pump's speed",
        TunedPart.Weep => $"the weep of tier {Tier}",
        TunedPart.Standpipe => "the standpipes",
        TunedPart.Branch => $"the branch of tier {Tier}",
        TunedPart.Screen => "the screen",
        _ => throw new InvariantBrokenException($"every part has its words, {Part} too"),
    };

    /// <summary>What it is on a rack that is as its file says.</summary>
    internal double AsWritten => Part == TunedPart.Screen ? 0 : 1;

    /// <summary>The least that it is taken to be.</summary>
    internal double Least => Part switch
    {
        TunedPart.Pump => 0.3,
        TunedPart.Branch => 0.2,
        TunedPart.Screen => 0,
        _ => 0.1,
    };

    /// <summary>The most that it is taken to be: no pump turns much faster than its curve, and no hole passes much more than its bore.
    /// </summary>
    internal double Most => Part switch
    {
        TunedPart.Pump => 1.3,
        TunedPart.Screen => 500,
        _ => 3,
    };

    /// <summary>How far it is moved to see what it does, always the way that fills a tray sooner: what fills then fills still.</summary>
    internal double Step => Part switch
    {
        TunedPart.Pump or TunedPart.Branch => 0.01,
        TunedPart.Screen => 0.5,
        _ => -0.01,
    };

    /// <summary>A figure that can only be told less well than this is left as it is written.</summary>
    internal double WorthKnowingWithin => Part == TunedPart.Screen ? 5 : 0.25;

    /// <summary>Puts a value of it into what was measured.</summary>
    /// <param name="measured">What was measured besides.</param>
    /// <param name="value">The value.</param>
    internal MeasuredRack Put(MeasuredRack measured, MeasuredFigure value) => Part switch
    {
        TunedPart.Pump => measured with { PumpSpeed = value },
        TunedPart.Standpipe => measured with { Standpipe = value },
        TunedPart.Screen => measured with { ScreenLossK = value },
        TunedPart.Weep => measured with { Tiers = With(measured.Tiers, tier => tier with { Weep = value }) },
        _ => measured with { Tiers = With(measured.Tiers, tier => tier with { Branch = value }) },
    };

    private ImmutableArray<MeasuredTier> With(ImmutableArray<MeasuredTier> tiers, Func<MeasuredTier, MeasuredTier> change) =>
        [.. tiers.Select(tier => tier.Number == Tier ? change(tier) : tier)];
}
