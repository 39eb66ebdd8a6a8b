using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Every case of a campaign on one site: what is tried, in which order. It draws a case when asked for it, so that a plan of a
/// million cases costs little until they run.</summary>
public sealed class CampaignPlan
{
    private static readonly CasePhase[] phases = Enum.GetValues<CasePhase>();
    private readonly CaseDrawing drawing;
    private readonly ImmutableArray<FaultInstance> instances;
    private readonly (int First, int Second)[] strikes;

    /// <summary>Plans a campaign.</summary>
    /// <param name="site">The site.</param>
    /// <param name="options">What to try.</param>
    public CampaignPlan(Site site, CampaignOptions options)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(options);
        Site = site;
        Options = options;
        Days = FaultFreeDays.Of(site);
        drawing = new CaseDrawing(site, Days, options.Seed);
        instances = [.. FaultInstance.AllOf(site).Where(one => options.Only.IsEmpty || options.Only.Contains(one.Mode.Id))];
        strikes = [.. Singles().Concat(Pairs())];
    }

    /// <summary>The site.</summary>
    public Site Site { get; }

    /// <summary>What is tried.</summary>
    public CampaignOptions Options { get; }

    /// <summary>How many cases there are.</summary>
    public int Count => (strikes.Length * phases.Length + Options.Shard.Of - Options.Shard.Number) / Options.Shard.Of;

    /// <summary>Every mode that can strike somewhere on the site, each with how many places it has.</summary>
    public ImmutableArray<(FaultMode Mode, int Places)> Modes =>
        [.. FaultModes.All.Select(mode => (mode, instances.Count(one => one.Mode.Id == mode.Id))).Where(mode => mode.Item2 > 0)];

    internal FaultFreeDays Days { get; }

    /// <summary>Draws a case; null where the place's rack is never in its phase.</summary>
    /// <param name="index">From 0.</param>
    public CampaignCase? Draw(int index)
    {
        var at = index * Options.Shard.Of + Options.Shard.Number - 1;
        var (first, second) = strikes[at / phases.Length];
        return drawing.Draw(phases[at % phases.Length], instances[first], second < 0 ? null : instances[second]);
    }

    private IEnumerable<(int First, int Second)> Singles() => Options.Only.Length == 2
        ? []
        : Enumerable.Range(0, instances.Length).Select(index => (index, -1));

    // In an order that the seed shuffles, so that a campaign cut short is a fair sample.
    private (int First, int Second)[] Pairs()
    {
        if (!Options.Pairs || Options.Only.Length == 1)
        {
            return [];
        }

        var pairs = (
            from first in Enumerable.Range(0, instances.Length)
            from second in Enumerable.Range(first + 1, instances.Length - first - 1)
            where Options.Only.Length < 2 || instances[first].Mode != instances[second].Mode || Options.Only[0] == Options.Only[1]
            select (first, second)).ToArray();
        var chance = SplitMix64.Of(Options.Seed, "order of pairs");
        for (var left = pairs.Length; left > 1; left--)
        {
            var drawn = chance.Below(left);
            (pairs[left - 1], pairs[drawn]) = (pairs[drawn], pairs[left - 1]);
        }

        return pairs;
    }
}
