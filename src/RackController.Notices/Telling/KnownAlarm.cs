using NodaTime;

namespace RackController.Notices;

/// <summary>An alarm that called, as far as telling of it goes.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Since">When it called.</param>
/// <param name="Cause">What was wrong.</param>
internal sealed record KnownAlarm(string Key, Instant Since, string Cause)
{
    /// <summary>The bundle in which it was told; null while it was not.</summary>
    public string? ToldIn { get; init; }

    /// <summary>When it was told last; null while it was not.</summary>
    public Instant? ToldAt { get; init; }

    /// <summary>Whether somebody acknowledged it.</summary>
    public bool IsSeen { get; init; }

    /// <summary>Whether it was told once more because nobody did.</summary>
    public bool IsReminded { get; init; }

    /// <summary>Whether its condition has gone.</summary>
    public bool IsOver { get; init; }
}
