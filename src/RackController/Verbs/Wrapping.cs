using System.Text;

namespace RackController.Verbs;

/// <summary>Breaks text into lines between words, without blanks at their ends.</summary>
internal static class Wrapping
{
    /// <summary>The lines; what the first is indented by, the others are indented by two more.</summary>
    /// <param name="text">The text.</param>
    /// <param name="width">Letters on a line; a longer word stands alone.</param>
    public static IEnumerable<string> Lines(string text, int width)
    {
        var lead = new string(' ', text.Length - text.TrimStart().Length);
        var line = new StringBuilder(lead);
        var isEmpty = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!isEmpty && line.Length + 1 + word.Length > width)
            {
                yield return line.ToString();
                line.Clear().Append(lead).Append(lead.Length > 0 ? "  " : "");
                isEmpty = true;
            }

            line.Append(isEmpty ? "" : " ").Append(word);
            isEmpty = false;
        }

        yield return line.ToString();
    }
}
