using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>A run to be made and what must hold in it: which site, from when, for how long, what goes wrong, and what is
/// expected all the same. Already checked by its reader.</summary>
public sealed record Scenario
{
    /// <summary>Short name, for folders and reports: the name of its file.</summary>
    public required string Name { get; init; }

    /// <summary>What it proves, in a sentence or two.</summary>
    public required string About { get; init; }

    /// <summary>The file it came from, as the person named it.</summary>
    public required string File { get; init; }

    /// <summary>The rack file it runs on.</summary>
    public required string RackFile { get; init; }

    /// <summary>The site of that rack file.</summary>
    public required Site Site { get; init; }

    /// <summary>The true time at which it begins.</summary>
    public required Instant Start { get; init; }

    /// <summary>How long it runs.</summary>
    public required Duration Length { get; init; }

    /// <summary>How the site is found; the air of the room is that of <see cref="Room"/> where there is one.</summary>
    public PlantStart Found { get; init; } = PlantStart.Default;

    /// <summary>How the air of the room runs over every day; null for a room that stays as it is.</summary>
    public RoomProfile? Room { get; init; }

    /// <summary>What happens from outside, in order.</summary>
    public required ImmutableArray<ScenarioEvent> Events { get; init; }

    /// <summary>What must hold.</summary>
    public required ImmutableArray<Expectation> Expectations { get; init; }

    /// <summary>Hazards that software alone cannot prevent here, each with the wired part that does.</summary>
    public required ImmutableArray<AcceptedHazard> Accepts { get; init; }
}

/// <summary>A hazard that may show in a run, because something outside the controller stops it from hurting.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Backstop">The wired part that stops it, in words.</param>
public sealed record AcceptedHazard(HazardKind Kind, string Backstop);
