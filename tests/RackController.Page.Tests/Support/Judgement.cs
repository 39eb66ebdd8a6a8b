using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace RackController.Page.Tests;

/// <summary>What every page must hold to: WCAG 2.2 AA as far as axe can tell, targets of 44 px, and no sideways scrolling.</summary>
internal static class Judgement
{
    private const int LeastTargetPx = 44;

    private static readonly AxeRunOptions wcag = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
    };

    /// <summary>Fails with what is wrong.</summary>
    public static async Task HoldsAsync(IPage page)
    {
        var found = await page.RunAxe(wcag);
        Assert.Empty(found.Violations.SelectMany(rule => rule.Nodes.Select(node => $"{rule.Id}: {rule.Help}: {node.Html}")));
        Assert.Empty(await SmallTargetsAsync(page));
        Assert.True(
            await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"),
            "the page scrolls sideways");
    }

    // Links within a sentence are exempt, as in WCAG 2.5.8.
    private static async Task<string[]> SmallTargetsAsync(IPage page) => await page.EvaluateAsync<string[]>(
        """
        least => [...document.querySelectorAll("a, button, summary, select, input:not([type=hidden])")]
          .filter(it => it.checkVisibility() && !it.matches(".skip, p > a:not(.button)"))
          .filter(it => { const box = it.getBoundingClientRect(); return box.width < least - .5 || box.height < least - .5; })
          .map(it => [it.outerHTML.slice(0, 80), it.getBoundingClientRect().width, it.getBoundingClientRect().height].join(" "))
        """,
        LeastTargetPx);
}
