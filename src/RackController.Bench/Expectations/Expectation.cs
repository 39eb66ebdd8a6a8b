using NodaTime;

namespace RackController.Bench;

/// <summary>Something that a scenario says must hold of its run.</summary>
/// <param name="Name">What must hold, in the words of whoever wrote the scenario.</param>
/// <param name="Line">The line of the scenario that states it.</param>
/// <param name="Window">When it is judged.</param>
public abstract record Expectation(string Name, int Line, Window Window);

/// <summary>A statement that must be true at every moment.</summary>
/// <param name="Name">What must hold.</param>
/// <param name="Line">The line of the scenario that states it.</param>
/// <param name="Window">When it is judged.</param>
/// <param name="What">The statement.</param>
/// <param name="While">Judged only while this is true; null for always.</param>
public sealed record Always(string Name, int Line, Window Window, Statement What, Statement? While)
    : Expectation(Name, Line, Window);

/// <summary>A statement that must not be true at any moment.</summary>
/// <param name="Name">What must hold.</param>
/// <param name="Line">The line of the scenario that states it.</param>
/// <param name="Window">When it is judged.</param>
/// <param name="What">The statement.</param>
/// <param name="While">Judged only while this is true; null for always.</param>
public sealed record Never(string Name, int Line, Window Window, Statement What, Statement? While)
    : Expectation(Name, Line, Window);

/// <summary>Whenever one statement becomes true, another must be true within a time, that moment included.</summary>
/// <param name="Name">What must hold.</param>
/// <param name="Line">The line of the scenario that states it.</param>
/// <param name="Window">When the first statement counts.</param>
/// <param name="Limit">The time.</param>
/// <param name="Of">The first statement.</param>
/// <param name="Then">The second statement.</param>
public sealed record Within(string Name, int Line, Window Window, Duration Limit, Statement Of, Statement Then)
    : Expectation(Name, Line, Window);

/// <summary>Whenever a statement becomes true, the whole site must be well again within a time: every tray in use was flooded by a
/// flood that began since and is over, the controller runs, and no alarm is left to answer.</summary>
/// <param name="Name">What must hold.</param>
/// <param name="Line">The line of the scenario that states it.</param>
/// <param name="Window">When the statement counts.</param>
/// <param name="Limit">The time.</param>
/// <param name="Of">The statement.</param>
public sealed record Recovers(string Name, int Line, Window Window, Duration Limit, Statement Of) : Expectation(Name, Line, Window);

/// <summary>A part of a run.</summary>
/// <param name="From">Its first moment, since the run began.</param>
/// <param name="Until">Its end, since the run began.</param>
public sealed record Window(Duration From, Duration Until)
{
    /// <summary>Whether a moment lies inside.</summary>
    /// <param name="elapsed">Time since the run began.</param>
    public bool Contains(Duration elapsed) => elapsed >= From && elapsed < Until;
}
