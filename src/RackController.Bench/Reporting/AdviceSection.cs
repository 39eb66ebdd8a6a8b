using System.Text;

namespace RackController.Bench;

/// <summary>What a flood does when nothing is broken, rack by rack, and what to change.</summary>
internal static class AdviceSection
{
    public static void Write(StringBuilder html, RunResult result)
    {
        if (result.FloodAdvice.IsEmpty)
        {
            return;
        }

        html.Append("<section>\n<h2>What a flood does</h2>\n<p class=\"note\">One flood of each rack with everything whole, as the ")
            .Append("simulated rack computes it. ").Append(Html.Text(FloodWording.Legend)).Append("</p>\n");
        foreach (var advice in result.FloodAdvice)
        {
            html.Append("<div class=\"scroll\"><table><caption>").Append(Html.Text(advice.Survey.Rack.Name)).Append("</caption>\n");
            html.Head([.. FloodWording.Columns]).Append("<tbody>\n");
            foreach (var row in FloodWording.Rows(advice.Survey))
            {
                html.Row(row);
            }

            html.Append("</tbody></table></div>\n");
            Wrong(html, advice);
        }

        html.Append("</section>\n");
    }

    private static void Wrong(StringBuilder html, FloodAdvice advice)
    {
        foreach (var line in FloodWording.Wrong(advice))
        {
            html.Append("<p>").Append(Html.Text(line.Text)).Append("</p>\n");
            if (line.Items.Length > 0)
            {
                html.Append("<ol>");
                foreach (var item in line.Items)
                {
                    html.Append("<li>").Append(Html.Text(item)).Append("</li>");
                }

                html.Append("</ol>\n");
            }
        }
    }
}
