namespace RackController.Crash;

/// <summary>What a life finds of the journal that earlier lives left.</summary>
/// <param name="Sound">What it is; null when there is none, or it is broken.</param>
/// <param name="UpToDamage">What it gives up to the first damage; null when that is nothing.</param>
internal sealed record Inheritance(JournalCopy? Sound, JournalCopy? UpToDamage)
{
    /// <summary>What a life may be held to.</summary>
    public JournalCopy? Legible => Sound ?? UpToDamage;

    /// <summary>What a life lost of what it found; null when that is nothing.</summary>
    /// <param name="after">The journal after it.</param>
    public string? LostIn(JournalCopy? after)
    {
        var kept = (after?.Events ?? []).ToHashSet();
        var legible = Legible?.Events ?? [];

        // A flipped bit makes a word of a kind that is none, which occurs once and which the service refuses.
        var kinds = kept.Select(happened => happened.Kind)
            .Concat(legible.GroupBy(happened => happened.Kind).Where(alike => alike.Count() > 1).Select(alike => alike.Key)).ToHashSet();
        var lost = legible
            .Where(happened => kinds.Contains(happened.Kind) && IsOfLetters(happened.Words) && !kept.Contains(happened)).ToList();
        return lost.Count == 0 ? null : $"{lost.Count} events, first of them {lost[0].Words}";
    }

    // Another flipped bit makes a letter of none.
    private static bool IsOfLetters(string words) => !words.Any(letter => char.IsControl(letter) || letter == '\uFFFD');
}
