using RackController.Model;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace RackController.Live;

/// <summary>How a piece of the screen looks. Grey at rest; colour only for what is abnormal, and never colour alone.</summary>
internal enum Tone
{
    /// <summary>What is always there.</summary>
    Quiet,

    /// <summary>What is worth reading.</summary>
    Plain,

    /// <summary>Headings and keys.</summary>
    Strong,

    /// <summary>Something is not as it should be.</summary>
    Caution,

    /// <summary>Something is wrong that must be answered soon.</summary>
    Urgent,
}

/// <summary>One line of the screen, cut to its width rather than wrapped.</summary>
internal sealed class StyledLine
{
    private readonly List<Segment> segments = [];

    /// <summary>How many cells it takes.</summary>
    public int Width => Segment.CellCount(segments);

    /// <summary>Adds text.</summary>
    public StyledLine Add(string text, Tone tone = Tone.Plain)
    {
        segments.Add(new Segment(text, StyleOf(tone)));
        return this;
    }

    /// <summary>Adds a column: text filled up with blanks, or cut with an ellipsis.</summary>
    /// <param name="text">The text.</param>
    /// <param name="width">Width of the column.</param>
    /// <param name="tone">How it looks.</param>
    public StyledLine AddColumn(string text, int width, Tone tone = Tone.Plain)
    {
        var cut = Cut(text, width);
        return Add(cut + new string(' ', Math.Max(0, width - new Segment(cut).CellCount())), tone);
    }

    /// <summary>Adds the rest of the line, cut with an ellipsis where it does not fit.</summary>
    /// <param name="text">The text.</param>
    /// <param name="lineWidth">Width of the whole line.</param>
    /// <param name="tone">How it looks.</param>
    public StyledLine AddRest(string text, int lineWidth, Tone tone = Tone.Plain) =>
        Add(Cut(text, Math.Max(0, lineWidth - Width)), tone);

    /// <summary>Adds another line behind this one.</summary>
    public StyledLine Append(StyledLine other)
    {
        segments.AddRange(other.segments);
        return this;
    }

    /// <summary>The pieces, cut to a width.</summary>
    public IEnumerable<Segment> Render(int width)
    {
        var left = width;
        foreach (var segment in segments)
        {
            var cut = Segment.Truncate(segment, left);
            if (cut is null || left <= 0)
            {
                yield break;
            }

            left -= cut.CellCount();
            yield return cut;
        }
    }

    private static string Cut(string text, int width)
    {
        if (new Segment(text).CellCount() <= width)
        {
            return text;
        }

        return width < 1 ? "" : string.Concat(Segment.Truncate(new Segment(text), width - 1)?.Text, "…");
    }

    private static Style StyleOf(Tone tone) => tone switch
    {
        Tone.Quiet => new Style(Color.Grey54),
        Tone.Plain => Style.Plain,
        Tone.Strong => new Style(decoration: Decoration.Bold),
        Tone.Caution => new Style(Color.Yellow),
        Tone.Urgent => new Style(Color.Red, decoration: Decoration.Bold),
        _ => throw new InvariantBrokenException($"every tone has its style, {tone} too"),
    };
}
