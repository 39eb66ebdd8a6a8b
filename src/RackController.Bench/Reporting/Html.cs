using System.Net;
using System.Text;

namespace RackController.Bench;

/// <summary>Pieces of HTML. Whatever came from a file or a run is encoded here.</summary>
internal static class Html
{
    public static string Text(string text) => WebUtility.HtmlEncode(text);

    /// <summary>One row of a table.</summary>
    public static StringBuilder Row(this StringBuilder html, params ReadOnlySpan<string> cells)
    {
        html.Append("<tr>");
        foreach (var cell in cells)
        {
            html.Append("<td>").Append(Text(cell)).Append("</td>");
        }

        return html.Append("</tr>\n");
    }

    /// <summary>The head of a table.</summary>
    public static StringBuilder Head(this StringBuilder html, params ReadOnlySpan<string> cells)
    {
        html.Append("<thead><tr>");
        foreach (var cell in cells)
        {
            html.Append("<th scope=\"col\">").Append(Text(cell)).Append("</th>");
        }

        return html.Append("</tr></thead>\n");
    }

    /// <summary>What led to something, as a list.</summary>
    public static StringBuilder Causes(this StringBuilder html, RunResult result, IReadOnlyList<LogEntry> causes)
    {
        if (causes.Count == 0)
        {
            return html;
        }

        html.Append("<p>What led there:</p><ol class=\"causes\">");
        foreach (var cause in causes)
        {
            html.Append("<li><time>").Append(Text(LogText.LocalTime(result.Scenario.Site, cause.At)[..21])).Append("</time> <b>")
                .Append(Text(cause.Subject)).Append("</b> ").Append(Text(cause.What)).Append("<span class=\"because\">, because ")
                .Append(Text(cause.Because)).Append("</span></li>\n");
        }

        return html.Append("</ol>");
    }
}
