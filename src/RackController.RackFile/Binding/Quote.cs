using System.Globalization;
using System.Text;

namespace RackController.RackFile.Binding;

/// <summary>Quotes what a person wrote, so that it fits on one line and cannot disturb a terminal.</summary>
public static class Quote
{
    private const int LongestText = 60;

    /// <summary>The text between backticks, shortened, with control characters shown as <c>?</c>.</summary>
    /// <param name="text">What was written.</param>
    public static string Text(string text)
    {
        var quoted = new StringBuilder("`");
        foreach (var rune in text.EnumerateRunes().Take(LongestText))
        {
            var category = Rune.GetUnicodeCategory(rune);
            var harmless = category is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate
                or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
            quoted.Append(harmless ? rune.ToString() : "?");
        }

        return quoted.Append(text.Length > LongestText ? "...`" : "`").ToString();
    }
}
