namespace RackController.Conventions.Docs;

/// <summary>A fenced block of a Markdown page.</summary>
/// <param name="Page">The page.</param>
/// <param name="Line">The line of its first fence, from 1.</param>
/// <param name="Info">What stands behind the fence: <c>console</c>, <c>sh</c>, <c>yaml</c>.</param>
/// <param name="Lines">What stands between the fences.</param>
internal sealed record Block(string Page, int Line, string Info, IReadOnlyList<string> Lines)
{
    /// <summary>Every fenced block of every page.</summary>
    public static IEnumerable<Block> All => Repository.Pages.SelectMany(Of);

    /// <summary>The commands of a block that shows a session: each with the lines it is said to print.</summary>
    public IEnumerable<ShownCommand> Commands()
    {
        var starts = Lines.Index().Where(line => line.Item.StartsWith("$ ", StringComparison.Ordinal)).Select(line => line.Index).ToList();
        return starts.Zip(starts.Skip(1).Append(Lines.Count), (start, end) =>
            new ShownCommand($"{Page}:{Line + 1 + start}", Lines[start][2..], [.. Lines.Take(end).Skip(start + 1)]));
    }

    private static IEnumerable<Block> Of(string page)
    {
        var lines = Repository.Lines(page);
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("```", StringComparison.Ordinal))
            {
                var end = Array.IndexOf(lines, "```", i + 1);
                Assert.True(end > i, $"{page}:{i + 1}: the fence is never closed");
                yield return new(page, i + 1, lines[i][3..].Trim(), lines[(i + 1)..end]);
                i = end;
            }
        }
    }
}
