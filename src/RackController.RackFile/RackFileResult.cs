using System.Collections.Immutable;
using RackController.Model;

namespace RackController.RackFile;

/// <summary>What reading a rack file came to.</summary>
/// <param name="Site">The site; null when the file cannot be run.</param>
/// <param name="Complaints">Everything that is wrong or unwise, in the order of the file.</param>
/// <param name="CouldBeRead">Whether there was a file to judge: false for a missing or unreadable file or a directory, which is
/// no fault of its content.</param>
/// <param name="Text">What the file says; empty when it could not be read.</param>
public sealed record RackFileResult(
    Site? Site, ImmutableArray<Complaint> Complaints, bool CouldBeRead = true, string Text = "");
