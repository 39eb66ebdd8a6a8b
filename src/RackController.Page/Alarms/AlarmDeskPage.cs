using System.Collections.Immutable;
using RackController.Control;

namespace RackController.Page;

/// <summary>The page of alarms.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="MayAct">Whether whoever looks may act.</param>
/// <param name="Standing">What is not normal, most urgent first.</param>
/// <param name="Fault">Why nothing of the past can be shown; null when it can.</param>
/// <param name="Figures">How the alarms of the last days stand against the figures of the standards.</param>
/// <param name="Days">How many came on each day, oldest first.</param>
/// <param name="MostFrequent">Which came most often.</param>
/// <param name="All">Every alarm of the site.</param>
/// <param name="Past">What became of alarms, newest first.</param>
public sealed record AlarmDeskPage(
    FrameView Frame, bool MayAct, ImmutableArray<StandingAlarm> Standing, string? Fault, ImmutableArray<AlarmFigure> Figures,
    ImmutableArray<AlarmDay> Days, ImmutableArray<AlarmFigure> MostFrequent, ImmutableArray<KnownAlarm> All, ImmutableArray<DueView> Past)
{
    /// <summary>Whether notices are asked for and do not all get through.</summary>
    public bool AreNoticesInTrouble { get; init; }
}

/// <summary>An alarm that is not normal.</summary>
/// <param name="Alarm">The alarm.</param>
/// <param name="Since">Since when it is in its state, local.</param>
/// <param name="ComesBack">When it comes into sight again, local; null unless it is shelved.</param>
/// <param name="CanBePutAside">Whether it can be shelved and taken out of service.</param>
public sealed record StandingAlarm(Alarm Alarm, string Since, string? ComesBack, bool CanBePutAside)
{
    /// <summary>Whether it is in sight.</summary>
    public bool IsInSight => Alarm.State is not (AlarmState.Shelved or AlarmState.OutOfService or AlarmState.SuppressedByDesign);
}

/// <summary>A figure beside the one that is recommended.</summary>
/// <param name="What">What it counts.</param>
/// <param name="Ours">What it is here.</param>
/// <param name="Theirs">What is recommended; empty where nothing is.</param>
/// <param name="IsOdd">Whether ours is worse.</param>
public sealed record AlarmFigure(string What, string Ours, string Theirs, bool IsOdd);

/// <summary>The alarms of one day, ready to be drawn.</summary>
/// <param name="Day">The day, local.</param>
/// <param name="Count">How many came.</param>
/// <param name="Share">As a share of the day with the most, in percent.</param>
public sealed record AlarmDay(string Day, int Count, int Share);

/// <summary>An alarm that the site has.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Priority">How urgent it is.</param>
/// <param name="State">Its state, in the words of the standard.</param>
/// <param name="IsInService">Whether it is in service.</param>
public sealed record KnownAlarm(string Key, string Priority, string State, bool IsInService);

/// <summary>The page that asks for how long an alarm is shelved.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Key">The key of the alarm.</param>
/// <param name="Consequences">What comes of it.</param>
/// <param name="Hours">The lengths that can be chosen, in hours.</param>
public sealed record ShelvePage(FrameView Frame, string Key, ImmutableArray<string> Consequences, ImmutableArray<int> Hours);
