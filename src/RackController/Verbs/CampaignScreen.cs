using System.Collections.Immutable;
using System.Diagnostics;
using RackController.Bench;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>How a campaign gets on while it runs: a bar in a terminal, a line now and then elsewhere.</summary>
internal static class CampaignScreen
{
    private static readonly TimeSpan betweenLines = TimeSpan.FromSeconds(10);

    /// <summary>Runs it and shows how it gets on.</summary>
    /// <param name="plan">The campaign.</param>
    /// <param name="output">Where to show it.</param>
    /// <param name="stop">Ends it early.</param>
    public static ImmutableArray<CaseOutcome> Run(CampaignPlan plan, TextWriter output, CancellationToken stop)
    {
        var watch = Stopwatch.StartNew();
        return Screen.IsTerminal(output) ? WithABar(plan, watch, output, stop) : WithLines(plan, watch, output, stop);
    }

    private static ImmutableArray<CaseOutcome> WithLines(CampaignPlan plan, Stopwatch watch, TextWriter output, CancellationToken stop)
    {
        var next = betweenLines;
        return Campaign.Run(plan, progress =>
        {
            if (watch.Elapsed >= next)
            {
                next = watch.Elapsed + betweenLines;
                output.WriteLine($"{Percent(plan, progress):0} %: {Words(progress, watch)}");
            }
        }, stop);
    }

    private static ImmutableArray<CaseOutcome> WithABar(CampaignPlan plan, Stopwatch watch, TextWriter output, CancellationToken stop)
    {
        ImmutableArray<CaseOutcome> outcomes = [];
        Screen.Over(output).Progress().AutoClear(true).Start(bars =>
        {
            var bar = bars.AddTask("campaign", maxValue: 100);
            outcomes = Campaign.Run(plan, progress =>
            {
                bar.Value = Percent(plan, progress);
                bar.Description = Markup.Escape(Words(progress, watch));
            }, stop);
        });
        return outcomes;
    }

    private static double Percent(CampaignPlan plan, CampaignProgress progress) => 100 * Math.Max(
        (double)progress.Done / Math.Max(1, progress.Count),
        plan.Options.RackDays is { } budget ? Math.Min(1, progress.RackDays / budget) : 0);

    private static string Words(CampaignProgress progress, Stopwatch watch) =>
        $"{progress.Done} of {progress.Count} cases, {progress.RackDays:0} rack-days, "
        + $"{progress.RackDays / watch.Elapsed.TotalSeconds:0} a second, {progress.Failed} failed";
}
