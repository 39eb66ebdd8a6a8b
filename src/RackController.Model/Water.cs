using NodaTime;

namespace RackController.Model;

/// <summary>The tank that the pump draws from: straight walls, so depth follows from volume.</summary>
/// <param name="CapacityL">Volume to the brim, litres: 1 to 5000.</param>
/// <param name="DepthMm">Inside depth from floor to brim, mm: 50 to 10 000.</param>
/// <param name="FloorHeightMm">Height of its inside floor above the floor of the room, mm. Default 20.</param>
/// <param name="NormalVolumeL">What the grower fills it to, litres; at most <paramref name="CapacityL"/>. Default nine tenths
/// of it.</param>
/// <param name="PumpIntakeMm">Depth below which the pump draws air, mm; less than <paramref name="DepthMm"/>. Default 30.</param>
public sealed record Reservoir(
    double CapacityL, double DepthMm, double FloorHeightMm, double NormalVolumeL, double PumpIntakeMm)
{
    /// <summary>Plan area, m2: 1 L over 1 m2 is 1 mm deep.</summary>
    public double AreaM2 => CapacityL / DepthMm;
}

/// <summary>The pump: which relay runs it and what it can lift.</summary>
/// <param name="Load">Its relay.</param>
/// <param name="Curve">What it can lift.</param>
public sealed record Pump(LoadId Load, PumpCurve Curve);

/// <summary>Head of a centrifugal pump at a flow: H = H0 (1 - (Q / Qmax)^n).</summary>
/// <param name="ShutOffHeadM">H0, head at no flow, m.</param>
/// <param name="MaxFlowLpm">Qmax, flow at no head, L/min.</param>
/// <param name="Exponent">n; 2 where only one point is known.</param>
public sealed record PumpCurve(double ShutOffHeadM, double MaxFlowLpm, double Exponent)
{
    /// <summary>The curve at another speed, by the affinity laws: flow as the speed, head as its square (kb.eng-software.com, page
    /// 23068780).</summary>
    /// <param name="speedShare">Share of the speed: above 0.</param>
    public PumpCurve AtSpeed(double speedShare) =>
        this with { ShutOffHeadM = ShutOffHeadM * speedShare * speedShare, MaxFlowLpm = MaxFlowLpm * speedShare };
}

/// <summary>The vertical supply pipe with a tee per tier.</summary>
/// <param name="BoreMm">Inside diameter, mm: 2 to 200. Default 26.6, a 1 in schedule 40 pipe.</param>
/// <param name="RunLengthMm">Length of pipe and hose from the pump to the lowest tee, mm. Default: the height of the lowest
/// tray and 600 mm.</param>
/// <param name="RunMinorLossK">Sum of the minor loss coefficients from the pump to the lowest tee (entrance, elbows,
/// screen). Default 7.5.</param>
/// <param name="TeeMinorLossK">Minor loss coefficient of flow past one tee. Default 0.3.</param>
/// <param name="HasCheckValve">Whether water is kept from running back through the stopped pump. Default yes.</param>
public sealed record SupplyRiser(
    double BoreMm, double RunLengthMm, double RunMinorLossK, double TeeMinorLossK, bool HasCheckValve);

/// <summary>The pipe from a tee of the riser to one tray.</summary>
/// <param name="BoreMm">Inside diameter, mm: 2 to 200. Default 12.7. Wide branches without a throttle starve the upper
/// tiers.</param>
/// <param name="LengthMm">Length, mm. Default 250.</param>
/// <param name="MinorLossK">Sum of its minor loss coefficients, with tee, valve or throttle, and exit. Default: throttled so
/// that all trays fill evenly.</param>
/// <param name="OutletAboveTrayFloorMm">Height of its outlet above the tray's floor, mm. Default 70.</param>
public sealed record SupplyBranch(double BoreMm, double LengthMm, double MinorLossK, double OutletAboveTrayFloorMm);

/// <summary>The common return pipe. Upper trays are served first when it is at its capacity.</summary>
/// <param name="BoreMm">Inside diameter, mm: 2 to 200. Default 52.5, a 2 in schedule 40 pipe.</param>
/// <param name="CapacityLpm">What it carries at most, L/min. Default by the stack formula of Wyly and Eaton, 7/24 full.</param>
public sealed record DrainStack(double BoreMm, double CapacityLpm);

/// <summary>The watertight pan under a rack, in which the reservoir stands too: what a tray, a pipe or the reservoir spills lies in
/// it until somebody mops it up. Straight walls.</summary>
/// <param name="CapacityL">Water that it holds to its rim beside what stands in it, litres: 1 to 5000.</param>
/// <param name="DepthMm">Height of its rim above its floor, mm: 10 to 1000. Default 80.</param>
public sealed record DripTray(double CapacityL, double DepthMm);

/// <summary>A float switch wired in series with the pump, which works without the controller: wet, it opens the pump's wire, and the
/// wire stays open until somebody has looked and pressed its reset.</summary>
/// <param name="TierNumber">The tier above whose standpipe it hangs, 1 at the bottom; null for one in the drip tray.</param>
/// <param name="HeightMm">Height of its switching point above the floor of its tray, mm: 1 up to the rim.</param>
public sealed record FloatCutout(int? TierNumber, double HeightMm)
{
    /// <summary>What a rack's wired float is called, on the site: <c>north/wired float</c>.</summary>
    /// <param name="rack">The rack.</param>
    public static string NameAt(Rack rack) => $"{rack?.Name}/wired float";
}

/// <summary>A time relay wired in series with the pump, fed by the wire that the pump's relay switches, which works without the
/// controller: once that wire has had power for so long without a break, it opens the pump's wire until the power goes.</summary>
/// <param name="After">How long: 1 min to 4 h, longer than the pump's maximum run.</param>
public sealed record TimeCutout(Duration After)
{
    /// <summary>What a rack's time relay is called, on the site: <c>north/wired time relay</c>.</summary>
    /// <param name="rack">The rack.</param>
    public static string NameAt(Rack rack) => $"{rack?.Name}/wired time relay";
}

/// <summary>The watertight tray of a tier, drained by a weep that is always open and a standpipe that sets the depth.</summary>
/// <param name="LengthMm">Inside length, mm: 100 to 3000. Default 1120.</param>
/// <param name="WidthMm">Inside width, mm: 100 to 3000. Default 640.</param>
/// <param name="RimDepthMm">Depth at which water runs over the edge onto the floor, mm: 10 to 500. Default 85.</param>
/// <param name="StandpipeHeightMm">Height of the standpipe's mouth above the tray's floor, mm: 5 to 500, below the rim. Default
/// 44.5.</param>
/// <param name="StandpipeBoreMm">Inside diameter of the standpipe, mm: 2 to 200. Default 26.6.</param>
/// <param name="WeepBoreMm">Diameter of the weep, mm: up to 50; 0 for a tray that drains only back through its supply. Default
/// 9.5.</param>
/// <param name="Contents">What stands in it.</param>
public sealed record FloodTray(
    double LengthMm, double WidthMm, double RimDepthMm, double StandpipeHeightMm, double StandpipeBoreMm,
    double WeepBoreMm, TrayContents Contents)
{
    /// <summary>From this share of the standpipe's height on a tray counts as filled: the weep makes the last of it slow.</summary>
    private const double FilledShare = 0.9;

    /// <summary>A tray with less water than this, mm, counts as drained: the last film takes long to run off and drowns no
    /// root.</summary>
    public const double DrainedBelowMm = 3;

    /// <summary>Depth from which it counts as filled, mm.</summary>
    public double FilledMm => FilledShare * StandpipeHeightMm;

    /// <summary>Plan area, m2.</summary>
    public double AreaM2 => LengthMm * WidthMm / 1e6;
}

/// <summary>What stands in a flood tray and takes up room and water.</summary>
/// <param name="InsertTrays">How many 10 x 20 in insert trays stand in it: 0 to 40. Default 4.</param>
/// <param name="Media">What the crop roots in, in the grower's words: <c>coir</c> (the default), <c>hemp mat</c>.</param>
/// <param name="DisplacedShare">Share of the tray's plan area that the media and trays take from the water: 0 to 0.9.
/// Default 0.3.</param>
/// <param name="DisplacedToMm">Up to which depth they do so, mm. Default 40.</param>
public sealed record TrayContents(int InsertTrays, string Media, double DisplacedShare, double DisplacedToMm);
