using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Something that can be asked of a rack.</summary>
/// <param name="Address">The last part of its address.</param>
/// <param name="Title">What it is, as the title of the page that asks.</param>
/// <param name="Verb">What its button says.</param>
/// <param name="Request">The request, by a name.</param>
/// <param name="Consequences">What comes of it, as things are.</param>
internal sealed record Choice(
    string Address, string Title, string Verb, Func<string, OperatorRequest> Request,
    Func<Site, SiteStatus, IEnumerable<string>> Consequences);

/// <summary>The page that shows what comes of something before it is asked for.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Title">What is asked.</param>
/// <param name="Consequences">What comes of it.</param>
/// <param name="Verb">What the button says.</param>
/// <param name="Address">Where the answer goes.</param>
/// <param name="Fields">What goes with it.</param>
public sealed record ConfirmPage(
    FrameView Frame, string Title, ImmutableArray<string> Consequences, string Verb, string Address, ImmutableArray<HiddenField> Fields);

/// <summary>A field of a form that nobody sees.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Value">Its value.</param>
public sealed record HiddenField(string Name, string Value);
