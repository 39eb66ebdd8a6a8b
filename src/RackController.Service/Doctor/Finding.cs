namespace RackController.Service;

/// <summary>One thing that was looked at before a board is trusted with a rack.</summary>
/// <param name="Weight">What it means.</param>
/// <param name="Subject">What was looked at: <c>chip 'lab-a'</c>.</param>
/// <param name="Text">What was found and, unless that is sound, what to do.</param>
public sealed record Finding(FindingWeight Weight, string Subject, string Text)
{
    internal static Finding Sound(string subject, string text) => new(FindingWeight.Sound, subject, text);

    internal static Finding Doubtful(string subject, string text) => new(FindingWeight.Doubtful, subject, text);

    internal static Finding Wrong(string subject, string text) => new(FindingWeight.Wrong, subject, text);
}

/// <summary>What a finding means.</summary>
public enum FindingWeight
{
    /// <summary>As it should be.</summary>
    Sound,

    /// <summary>The rack can be driven, and something is missing that would make it safer.</summary>
    Doubtful,

    /// <summary>The rack cannot be driven as its file says, or not for long.</summary>
    Wrong,
}
