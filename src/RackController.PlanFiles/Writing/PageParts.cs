using System.Net;
using System.Text;

namespace RackController.PlanFiles;

/// <summary>The frame of the pages, and the encoding of whatever came from a file.</summary>
internal static class PageParts
{
    /// <summary>Text as HTML.</summary>
    /// <param name="text">Anything.</param>
    public static string Text(string text) => WebUtility.HtmlEncode(text);

    /// <summary>A page that needs nothing beside it, neither a network nor scripts.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="body">What it shows, as HTML.</param>
    public static string Page(string title, string body) => Read("plain.html")
        .Replace("{{title}}", Text(title), StringComparison.Ordinal)
        .Replace("{{style}}", Read("report.css") + Read("plan.css"), StringComparison.Ordinal)
        .Replace("{{body}}", body, StringComparison.Ordinal);

    /// <summary>A piece of a page that travels inside the program.</summary>
    /// <param name="name">Its file name.</param>
    /// <exception cref="InvalidOperationException">The program was built without it.</exception>
    public static string Read(string name)
    {
        using var stream = typeof(PageParts).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"the page file {name} is missing from the program");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
