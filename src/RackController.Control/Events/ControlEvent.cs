using RackController.Model;

namespace RackController.Control;

/// <summary>What sort of thing happened.</summary>
public enum EventKind
{
    /// <summary>A load was switched on or off.</summary>
    Load,

    /// <summary>A flood cycle moved to another phase.</summary>
    Flood,

    /// <summary>An interlock began to act, latched or returned.</summary>
    Interlock,

    /// <summary>An alarm changed its state.</summary>
    Alarm,

    /// <summary>A person asked for something, and this became of it.</summary>
    Request,

    /// <summary>A proof test began, took a step or ended.</summary>
    ProofTest,

    /// <summary>A reading became unknown or known again.</summary>
    Reading,

    /// <summary>The wall clock stepped or changed its trust.</summary>
    Clock,

    /// <summary>The controller itself: started, late, inputs or outputs failing.</summary>
    Controller,
}

/// <summary>
/// One thing that happened, with its cause. Events are made only when something changes, carry words that are the same
/// in the journal, on the bench and on the page, and compare by value, so that two runs can be held against each other.
/// </summary>
/// <param name="At">When, on both clocks.</param>
/// <param name="Kind">What sort of thing.</param>
/// <param name="Subject">What it happened to: the name of a load, sensor or rack, or the key of an alarm.</param>
/// <param name="What">What happened, one word or a short phrase: <c>on</c>, <c>filling</c>, <c>latched</c>.</param>
/// <param name="Because">Why, as a phrase that can follow "because".</param>
public sealed record ControlEvent(Moment At, EventKind Kind, string Subject, string What, string Because);

/// <summary>Takes events as they happen, in order.</summary>
public interface IEventSink
{
    /// <summary>Takes one event.</summary>
    /// <param name="happened">What happened.</param>
    void Take(ControlEvent happened);
}
