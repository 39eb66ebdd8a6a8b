using System.Collections.Immutable;
using RackController.Control;

namespace RackController.Page;

/// <summary>What the page shows of a site at one moment, in words and shares, ready to be drawn.</summary>
/// <param name="Clock">The time of the picture, local.</param>
/// <param name="Notes">What must be known to read the rest: simulated, how fast, a clock that is not trusted, a scan that fails.</param>
/// <param name="Alarms">Every alarm that calls for somebody, most urgent first.</param>
/// <param name="QuietAlarms">How many are shelved, suppressed by design or out of service, and so do not call.</param>
/// <param name="Racks">Every rack.</param>
/// <param name="Circuits">Every circuit.</param>
/// <param name="Due">What is due next, soonest first.</param>
/// <param name="Recent">What happened last, newest first.</param>
public sealed record NowView(
    string Clock, ImmutableArray<NoteView> Notes, ImmutableArray<AlarmView> Alarms, int QuietAlarms, ImmutableArray<RackView> Racks,
    ImmutableArray<CircuitView> Circuits, ImmutableArray<DueView> Due, ImmutableArray<DueView> Recent)
{
    /// <summary>How many works of upkeep are due, in words; null while none is.</summary>
    public string? Upkeep { get; init; }
}

/// <summary>A remark in the line below the title.</summary>
/// <param name="Words">The remark.</param>
/// <param name="IsOdd">Whether it tells of something that should not be.</param>
public sealed record NoteView(string Words, bool IsOdd);

/// <summary>One alarm.</summary>
/// <param name="Alarm">The alarm.</param>
/// <param name="Since">Since when it is in its state, local.</param>
public sealed record AlarmView(Alarm Alarm, string Since);

/// <summary>What a circuit carries.</summary>
/// <param name="Name">Its name.</param>
/// <param name="CurrentA">What it carries, A.</param>
/// <param name="LimitA">What it may carry for hours, A.</param>
/// <param name="IsMeasured">Whether a sensor says so; else it is the sum of the nameplates of what is on.</param>
/// <param name="Supply">What the supply sense says; null where none is.</param>
public sealed record CircuitView(string Name, double CurrentA, double LimitA, bool IsMeasured, ReadingView? Supply)
{
    /// <summary>How much of the limit is used, in percent, 100 at most.</summary>
    public int UsedPercent => (int)Math.Clamp(CurrentA / LimitA * 100, 0, 100);
}

/// <summary>Something that is due or has happened.</summary>
/// <param name="At">When, local.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="What">What it is.</param>
/// <param name="Because">Why; empty for what is due.</param>
public sealed record DueView(string At, string Subject, string What, string Because);

/// <summary>What a sensor says.</summary>
/// <param name="Name">Its name, without its rack.</param>
/// <param name="Words">The value with its unit, or why it is not known.</param>
/// <param name="IsOdd">Whether it is unknown, or tells of something that should not be.</param>
public sealed record ReadingView(string Name, string Words, bool IsOdd);
