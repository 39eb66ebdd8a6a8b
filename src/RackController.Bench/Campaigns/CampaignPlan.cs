using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Every case of a campaign on one site: what is tried, in which order. It draws a case when asked for it, so a plan of a
/// hundred thousand cases costs nothing until they run.</summary>
public sealed class CampaignPlan
{
    private readonly CaseDrawing drawing;
    private readonly ImmutableArray<FaultInstance> instances;
    private readonly (CasePhase Phase, int First, int Second)[] cases;

    /// <summary>Plans a campaign.</summary>
    /// <param name="site">The site.</param>
    /// <param name="options">What to try.</param>
    public CampaignPlan(Site site, CampaignOptions options)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(options);
        Site = site;
        Days = FaultFreeDays.Of(site);
        drawing = new CaseDrawing(site, Days, options.Seed);
        instances = [.. FaultInstance.AllOf(site)];
        cases = [.. Cases(options)];
    }

    /// <summary>The site.</summary>
    public Site Site { get; }

    /// <summary>How many cases there are.</summary>
    public int Count => cases.Length;

    internal FaultFreeDays Days { get; }

    /// <summary>Draws a case; null where no rack is ever in its phase.</summary>
    /// <param name="index">From 0.</param>
    public CampaignCase? Draw(int index)
    {
        var (phase, first, second) = cases[index];
        return drawing.Draw(phase, instances[first], second < 0 ? null : instances[second]);
    }

    private IEnumerable<(CasePhase Phase, int First, int Second)> Cases(CampaignOptions options)
    {
        foreach (var phase in Enum.GetValues<CasePhase>())
        {
            for (var first = 0; first < instances.Length; first++)
            {
                yield return (phase, first, -1);
            }
        }
    }
}
