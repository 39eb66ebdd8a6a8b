using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Bench;

/// <summary>Whether a statement is true at a moment.</summary>
public enum Truth
{
    /// <summary>It cannot be judged at this moment: a statement about whole days in the middle of one.</summary>
    NotNow,

    /// <summary>It is true.</summary>
    Yes,

    /// <summary>It is not.</summary>
    No,
}

/// <summary>
/// Something that can be true or false of a run at a moment. The vocabulary is closed: a scenario combines these, it does
/// not compute.
/// </summary>
public abstract record Statement
{
    /// <summary>Judges the moment.</summary>
    /// <param name="now">What is true now.</param>
    public abstract Truth Judge(IObserved now);

    /// <summary>The levels of continuous quantities at whose passing it may become true or false; none for what only events
    /// change.</summary>
    /// <param name="site">The site.</param>
    public virtual ImmutableArray<WatchedLevel> Levels(Site site) => [];

    /// <summary>The statement in words: <c>north/pump is on</c>.</summary>
    /// <param name="site">The site that gives the names.</param>
    public abstract string Words(Site site);

    /// <summary>What is the case now, in words, for whoever asks why the statement is not as it should be.</summary>
    /// <param name="now">What is true now.</param>
    public abstract string Seen(IObserved now);

    /// <summary>Whether an event about this subject could explain it.</summary>
    /// <param name="site">The site that gives the names.</param>
    /// <param name="subject">The subject of an event.</param>
    public abstract bool Concerns(Site site, string subject);

    /// <summary>Yes or no.</summary>
    /// <param name="isTrue">Which.</param>
    protected static Truth Of(bool isTrue) => isTrue ? Truth.Yes : Truth.No;
}
