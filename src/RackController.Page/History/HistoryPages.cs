using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Page;

/// <summary>The page of the past.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Site">The site.</param>
/// <param name="Asked">What is asked for.</param>
/// <param name="Title">Of what and from when until when, in words.</param>
/// <param name="Fault">Why nothing can be shown; null when it can.</param>
/// <param name="Tables">What the charts show, in numbers.</param>
/// <param name="Loads">What was on, in numbers; empty where that is not asked for.</param>
/// <param name="Marks">Floods and alarms, oldest first.</param>
public sealed record HistoryPage(
    FrameView Frame, Site Site, HistoryAsked Asked, string Title, string? Fault, ImmutableArray<ChartTableView> Tables,
    ImmutableArray<LoadTimesView> Loads, ImmutableArray<DueView> Marks);

/// <summary>A chart and its numbers.</summary>
/// <param name="Key">Which chart.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Unit">In which unit.</param>
/// <param name="Columns">The sensors.</param>
/// <param name="Rows">A row for each stretch of time.</param>
public sealed record ChartTableView(
    string Key, string Title, string Unit, ImmutableArray<string> Columns, ImmutableArray<TableRowView> Rows);

/// <summary>A row of numbers.</summary>
/// <param name="Head">When.</param>
/// <param name="Cells">What each sensor said.</param>
public sealed record TableRowView(string Head, ImmutableArray<string> Cells);

/// <summary>What a load did over a span.</summary>
/// <param name="Name">The load.</param>
/// <param name="OnFor">How long it was on.</param>
/// <param name="Starts">How often it went on.</param>
/// <param name="Last">When it was on last; empty if never.</param>
public sealed record LoadTimesView(string Name, string OnFor, int Starts, string Last);

/// <summary>The page of events.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Fault">Why nothing can be shown; null when it can.</param>
/// <param name="Kinds">What kinds there are, as an address and a person say them.</param>
/// <param name="Subjects">What they can have happened to.</param>
/// <param name="Kind">The kind that is asked for; empty for all.</param>
/// <param name="Subject">What is asked for; empty for all.</param>
/// <param name="Events">The events, newest first.</param>
/// <param name="Older">The address of older ones; null where there are none.</param>
/// <param name="Query">What is asked for, as the part of an address behind the question mark.</param>
public sealed record EventsPage(
    FrameView Frame, string? Fault, ImmutableArray<Place> Kinds, ImmutableArray<string> Subjects, string Kind, string Subject,
    ImmutableArray<DueView> Events, string? Older, string Query);
