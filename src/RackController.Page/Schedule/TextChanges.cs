using System.Collections.Immutable;
using DiffPlex.DiffBuilder;
using DiffPlex.DiffBuilder.Model;

namespace RackController.Page;

/// <summary>What one text changes of another, line by line.</summary>
internal static class TextChanges
{
    /// <summary>The lines that go and those that come, in order.</summary>
    public static ImmutableArray<ChangedLine> Between(string before, string after)
    {
        var lines = ImmutableArray.CreateBuilder<ChangedLine>();
        var number = 0;
        foreach (var line in InlineDiffBuilder.Diff(before, after, ignoreWhiteSpace: false).Lines)
        {
            number += line.Type == ChangeType.Deleted ? 0 : 1;
            if (line.Type is ChangeType.Deleted or ChangeType.Inserted)
            {
                lines.Add(new ChangedLine(line.Type == ChangeType.Inserted, number, line.Text));
            }
        }

        return lines.ToImmutable();
    }
}

/// <summary>A line that comes or goes.</summary>
/// <param name="Comes">Whether it comes.</param>
/// <param name="Number">Its number in the new text; of one that goes, the number of the line before it.</param>
/// <param name="Text">What it says.</param>
public sealed record ChangedLine(bool Comes, int Number, string Text);
