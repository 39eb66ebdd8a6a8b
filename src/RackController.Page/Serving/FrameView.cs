using System.Collections.Immutable;

namespace RackController.Page;

/// <summary>What stands around every page.</summary>
/// <param name="Site">The name of the site; empty where whoever reads it need not know.</param>
/// <param name="Title">The title of the page.</param>
/// <param name="Place">The place in the menu that it belongs to.</param>
/// <param name="IsLive">Whether it follows what happens.</param>
public sealed record FrameView(string Site, string Title, string Place, bool IsLive)
{
    /// <summary>Where the browser goes by itself; null where it stays.</summary>
    public Again? Again { get; init; }

    /// <summary>The menu.</summary>
    public static readonly ImmutableArray<Place> Places =
    [
        new("Now", "/"), new("Batches", "/batches"), new("Upkeep", "/upkeep"), new("Alarms", "/alarms"), new("Floods", "/floods"),
        new("History", "/history"), new("Schedule", "/schedule"), new("People", "/people", Role.Configure),
    ];
}

/// <summary>A place in the menu.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Address">Where it is.</param>
/// <param name="Needs">Who finds it in the menu.</param>
public sealed record Place(string Name, string Address, Role Needs = Role.View);

/// <summary>Where a browser goes by itself once the service answers.</summary>
/// <param name="AfterS">After how many seconds.</param>
/// <param name="Address">Where.</param>
public sealed record Again(int AfterS, string Address);
