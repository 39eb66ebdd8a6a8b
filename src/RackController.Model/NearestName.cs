namespace RackController.Model;

/// <summary>Finds what a person probably meant to write.</summary>
public static class NearestName
{
    /// <summary>The candidate that takes the fewest changed letters, or null when none is near.</summary>
    /// <param name="written">What was written.</param>
    /// <param name="candidates">What could have been meant.</param>
    public static string? Of(string written, IEnumerable<string> candidates)
    {
        var (name, distance) = candidates
            .Select(candidate => (candidate, Distance: Distance(written, candidate)))
            .OrderBy(pair => pair.Distance)
            .ThenBy(pair => pair.candidate, StringComparer.Ordinal)
            .FirstOrDefault((candidate: "", Distance: int.MaxValue));
        return distance <= Math.Max(2, Math.Min(written.Length, name.Length) / 3) ? name : null;
    }

    /// <summary>A half-sentence that names the nearest candidate, or else the list of all.</summary>
    /// <param name="written">What was written.</param>
    /// <param name="candidates">What could have been meant.</param>
    public static string Advice(string written, IReadOnlyCollection<string> candidates) =>
        Of(written, candidates) is { } near ? $"did you mean `{near}`?"
        : candidates.Count == 0 ? "there is none to choose from"
        : $"write one of {string.Join(", ", candidates.Take(20))}";

    /// <summary>How many letters must be inserted, removed, replaced or swapped with their neighbour to turn one text into
    /// the other (optimal string alignment), without regard to capitals.</summary>
    /// <param name="a">One text; only its first 64 letters count.</param>
    /// <param name="b">The other text; only its first 64 letters count.</param>
    public static int Distance(string a, string b)
    {
        a = Comparable(a);
        b = Comparable(b);
        var cost = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                cost[i, j] = i == 0 ? j : j == 0 ? i : Math.Min(
                    Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1,
                    cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
                }
            }
        }

        return cost[a.Length, b.Length];
    }

    private static string Comparable(string text) =>
        (text.Length > 64 ? text[..64] : text).Replace('_', '-').ToUpperInvariant();
}
