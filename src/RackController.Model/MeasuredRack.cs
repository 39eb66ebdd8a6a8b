using System.Collections.Immutable;
using NodaTime;

namespace RackController.Model;

/// <summary>A figure that was fitted to measurements.</summary>
/// <param name="Value">The figure.</param>
/// <param name="Within">Half the width of its 95 % confidence interval, in the same unit.</param>
public sealed record MeasuredFigure(double Value, double Within);

/// <summary>
/// What timed floods told of a rack beside what its file says of pump and pipes: how much of what they should do they do. It is for
/// whoever foretells what the rack will do; no interlock follows it.
/// </summary>
/// <param name="On">The local date of the last flood that was timed.</param>
/// <param name="Floods">How many floods were timed: 3 to 1000.</param>
/// <param name="PumpSpeed">Share of its full speed at which the pump works as if it turned, by its curve: 0.3 to 1.3.</param>
/// <param name="ScreenLossK">Minor loss coefficient that the screen adds, 0 when clean: 0 to 500; null where it could not be told.</param>
/// <param name="Standpipe">What the standpipes drain, as a share of what their bores should: 0.1 to 3; null where it could not be
/// told.</param>
/// <param name="Tiers">What was told of tiers, bottom first; a tier that was not timed is missing.</param>
public sealed record MeasuredRack(
    LocalDate On, int Floods, MeasuredFigure PumpSpeed, MeasuredFigure? ScreenLossK, MeasuredFigure? Standpipe,
    ImmutableArray<MeasuredTier> Tiers)
{
    /// <summary>A flood is seldom the same twice: with fewer nobody could say how sure a figure is.</summary>
    public const int LeastFloods = 3;

    /// <summary>More floods than anybody times.</summary>
    public const int MostFloods = 1000;

    /// <summary>What was told of a tier; null where nothing was.</summary>
    /// <param name="number">1 at the bottom.</param>
    public MeasuredTier? Tier(int number) => Tiers.FirstOrDefault(tier => tier.Number == number);
}

/// <summary>What timed floods told of one tier; null where it could not be told.</summary>
/// <param name="Number">1 at the bottom.</param>
/// <param name="Weep">What its weep drains, as a share of what its bore should: 0.1 to 3.</param>
/// <param name="Branch">How far its branch is open, as a share of what its minor loss says: at the same head a branch that loses by
/// its minor losses alone carries so much of the flow: 0.2 to 3.</param>
public sealed record MeasuredTier(int Number, MeasuredFigure? Weep, MeasuredFigure? Branch);
