using System.Collections.Immutable;
using RackController.Model;

namespace RackController.RackFile.Mappings;

/// <summary>Makes a pump curve of the points that a data sheet gives, as the open EPANET engine documents it.</summary>
internal static class PumpCurves
{
    /// <summary>One rated point (q, h): head at no flow is 4/3 h, no head at 2 q, and the exponent follows as 2.</summary>
    public static PumpCurve? ThroughOnePoint(PumpPoint rated) => rated is { FlowLpm: > 0, HeadM: > 0 }
        ? new PumpCurve(rated.HeadM * 4 / 3, rated.FlowLpm * 2, 2)
        : null;

    /// <summary>Three points (0, h0), (q1, h1), (q2, h2): H = h0 - a Q^n with n = ln((h0 - h2) / (h0 - h1)) / ln(q2 / q1)
    /// and a = (h0 - h1) / q1^n.</summary>
    /// <returns>The curve; null when the points do not fall, or so steeply that no pump does.</returns>
    public static PumpCurve? ThroughThreePoints(ImmutableArray<PumpPoint> points)
    {
        if (points is not [{ FlowLpm: 0 } shutOff, var middle, var far]
            || !(0 < middle.FlowLpm && middle.FlowLpm < far.FlowLpm)
            || !(shutOff.HeadM > middle.HeadM && middle.HeadM > far.HeadM))
        {
            return null;
        }

        var exponent = Math.Log((shutOff.HeadM - far.HeadM) / (shutOff.HeadM - middle.HeadM))
            / Math.Log(far.FlowLpm / middle.FlowLpm);
        var slope = (shutOff.HeadM - middle.HeadM) / Math.Pow(middle.FlowLpm, exponent);
        var maxFlowLpm = Math.Pow(shutOff.HeadM / slope, 1 / exponent);
        return exponent is > 0 and <= 20 && double.IsFinite(maxFlowLpm)
            ? new PumpCurve(shutOff.HeadM, maxFlowLpm, exponent)
            : null;
    }
}
