using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>One scan, as a chronicler writes it down: all that Control was told, and what came of it.</summary>
internal sealed class Page
{
    /// <summary>The moment of the scan.</summary>
    public required Moment At { get; init; }

    /// <summary>The start of the controller that made it.</summary>
    public required Boot Boot { get; init; }

    /// <summary>What each sensor said.</summary>
    public required Reading[] Readings { get; init; }

    /// <summary>How the scan went.</summary>
    public required ScanConditions Conditions { get; init; }

    /// <summary>What people asked for.</summary>
    public required OperatorRequest[] Requests { get; init; }

    /// <summary>What each sensor says if nobody doubts it; null while its readings are not good.</summary>
    public double?[] Judged { get; set; } = [];

    /// <summary>The sensors that Control doubts, because they stand still; by its own word.</summary>
    public HashSet<string> Doubted { get; set; } = [];

    /// <summary>Whether each tier of each rack takes part.</summary>
    public bool[][] InUse { get; set; } = [];

    /// <summary>What each sensor is believed to say; null while it is unknown or doubted.</summary>
    public double?[] Believed { get; set; } = [];

    /// <summary>What is known of the current of each load.</summary>
    public Flow[] Flows { get; set; } = [];

    /// <summary>The sensor or relay whose proof test is under way as interlocks see it; null where none is.</summary>
    public string? UnderTest { get; set; }

    /// <summary>Whose proof test was passed at its end; by Control's word.</summary>
    public HashSet<string> Passed { get; set; } = [];

    /// <summary>Whose proof test failed at its end; by Control's word.</summary>
    public HashSet<string> Failed { get; set; } = [];

    /// <summary>The time by which schedules and proof tests go.</summary>
    public Instant Calendar { get; set; }

    /// <summary>The racks that had a fill which was not cut short, just now.</summary>
    public HashSet<RackId> Filled { get; set; } = [];

    /// <summary>What each load was told by it.</summary>
    public bool[] On { get; set; } = [];

    /// <summary>Which circuits it told their contactors to cut.</summary>
    public bool[] Cut { get; set; } = [];

    /// <summary>Which circuits could not carry all that was wanted.</summary>
    public bool[] Sheds { get; set; } = [];

    /// <summary>Which alarms were acknowledged.</summary>
    public HashSet<string> Acknowledged { get; set; } = [];

    /// <summary>The number of each rack's flood.</summary>
    public long[] Flood { get; set; } = [];

    /// <summary>Whether a flood waits on each rack.</summary>
    public bool[] Waits { get; set; } = [];

    /// <summary>Whether the last fill of each rack took its limit.</summary>
    public bool[] FillHitItsLimit { get; set; } = [];

    /// <summary>What the plain table answers, by the key of the interlock.</summary>
    public Dictionary<string, Answer> Answers { get; } = [];

    /// <summary>Which latches were reset at its beginning.</summary>
    public HashSet<string> Released { get; } = [];

    /// <summary>Whether inputs, outputs and the scan itself were good.</summary>
    public bool IsFaulty(Site site) => Conditions.LateBy > site.Scan.LateAfter || !Conditions.Io.IsOk;
}

/// <summary>What a row answers at one scan.</summary>
/// <param name="Present">Whether its cause, or a doubt about it, is there.</param>
/// <param name="Alarms">Whether its cause is there.</param>
/// <param name="Latched">Whether its latch has caught.</param>
internal readonly record struct Answer(bool Present, bool Alarms, bool Latched)
{
    /// <summary>A load that it leaves alone.</summary>
    public LoadId? Spares { get; init; }

    /// <summary>Whether it leaves alone whatever is on in its safe state.</summary>
    public bool SparesOnAtRest { get; init; }
}

/// <summary>A start of the controller.</summary>
/// <param name="Start">When it took charge.</param>
/// <param name="SavedAt">When what it remembers was kept; null when it remembers nothing.</param>
/// <param name="First">The place of its first page.</param>
internal sealed record Boot(Moment Start, Moment? SavedAt, int First)
{
    /// <summary>Whether an earlier run is remembered.</summary>
    public bool Remembers => SavedAt is not null;

    /// <summary>How long nobody was in charge, where two trusted clocks tell it.</summary>
    public Duration Away => SavedAt is { WallTrusted: true } saved && Start.WallTrusted && Start.Wall > saved.Wall
        ? Start.Wall - saved.Wall
        : Duration.Zero;
}
