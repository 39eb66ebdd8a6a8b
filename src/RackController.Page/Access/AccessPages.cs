using System.Collections.Immutable;

namespace RackController.Page;

/// <summary>The page that somebody signs in on.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Complaint">Why the last try came to nothing; null where there was none.</param>
/// <param name="Fault">Why the rack is not driven as it should be; null when it is.</param>
/// <param name="IsStopAsked">Whether whoever reads it has just asked for a stop.</param>
public sealed record SignInPage(FrameView Frame, string? Complaint, string? Fault, bool IsStopAsked);

/// <summary>The page of all people.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Complaint">Why the last change came to nothing; null where there was none.</param>
/// <param name="People">Everybody.</param>
/// <param name="Tokens">The tokens of all programs.</param>
/// <param name="Served">Where the page is served.</param>
public sealed record PeoplePage(
    FrameView Frame, string? Complaint, ImmutableArray<PersonView> People, ImmutableArray<TokenView> Tokens, ServedAt Served);

/// <summary>Somebody in the list of people.</summary>
/// <param name="Name">Their name.</param>
/// <param name="Role">What they may do, in one word.</param>
/// <param name="IsReader">Whether it is who reads the page.</param>
public sealed record PersonView(string Name, string Role, bool IsReader);

/// <summary>A token in the list.</summary>
/// <param name="Key">What the page knows it by.</param>
/// <param name="Name">What it is for.</param>
/// <param name="Role">What it may do at most, in one word.</param>
/// <param name="Maker">Who made it.</param>
/// <param name="Used">When it was used last, local.</param>
public sealed record TokenView(string Key, string Name, string Role, string Maker, string Used);

/// <summary>The page that says what came of a change, and what to do next.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Title">What came of it.</param>
/// <param name="Lines">What to know.</param>
/// <param name="Secret">A token to be copied; null where there is none.</param>
/// <param name="Links">Where to go on.</param>
public sealed record DonePage(FrameView Frame, string Title, ImmutableArray<string> Lines, string? Secret, ImmutableArray<string> Links);

/// <summary>The page of who reads it.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Name">Their name.</param>
/// <param name="Role">What they may do, in one word.</param>
/// <param name="Complaint">Why the last change came to nothing; null where there was none.</param>
/// <param name="Sessions">Where they are signed in.</param>
public sealed record AccountPage(FrameView Frame, string Name, string Role, string? Complaint, ImmutableArray<SessionView> Sessions);

/// <summary>A session in the list.</summary>
/// <param name="Key">What the page knows it by.</param>
/// <param name="Device">With what.</param>
/// <param name="From">From where.</param>
/// <param name="Used">When it was used last, local.</param>
/// <param name="IsThis">Whether it is the one that reads the page.</param>
public sealed record SessionView(string Key, string Device, string From, string Used, bool IsThis);

/// <summary>Where the page is served.</summary>
/// <param name="Addresses">By which addresses.</param>
/// <param name="Later">By which addresses once somebody is set up.</param>
/// <param name="Fingerprint">The SHA-256 of the certificate; null where there is none.</param>
public sealed record ServedAt(ImmutableArray<string> Addresses, ImmutableArray<string> Later, string? Fingerprint);
