using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RackController.Page;

/// <summary>The rack file in use.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Text">What it says.</param>
/// <param name="Versions">When its earlier versions were replaced, newest first.</param>
internal sealed record ApiRackFile(string Name, string Text, ImmutableArray<string> Versions);

/// <summary>A text to be judged and tried.</summary>
/// <param name="Text">A whole rack file.</param>
internal sealed record ApiDraftText(string? Text);

/// <summary>The draft that there is.</summary>
/// <param name="Text">What it says.</param>
/// <param name="CanRun">Whether a site can be driven by it.</param>
/// <param name="Complaints">What is wrong with it, and what would be wiser.</param>
/// <param name="TriedPercent">How much of its trial is done.</param>
/// <param name="TrialFault">Why the trial came to nothing; null when it did not.</param>
/// <param name="Figures">What a week comes to now and with the draft; empty while the trial goes on.</param>
/// <param name="Hazards">Every hazard that the trial showed.</param>
internal sealed record ApiDraft(
    string Text, bool CanRun, ImmutableArray<ApiComplaint> Complaints, int TriedPercent, string? TrialFault,
    ImmutableArray<ApiFigure> Figures, ImmutableArray<string> Hazards);

/// <summary>What is wrong, or would be wiser.</summary>
/// <param name="Line">In which line, from 1.</param>
/// <param name="Column">In which column, from 1.</param>
/// <param name="Weight">error or warning.</param>
/// <param name="What">What is wrong and what to do.</param>
internal sealed record ApiComplaint(int Line, int Column, string Weight, string What);

/// <summary>One figure of a trial.</summary>
/// <param name="Of">Of what.</param>
/// <param name="What">What it is, with its unit.</param>
/// <param name="AsItIs">With the file in use.</param>
/// <param name="AsDrafted">With the draft.</param>
internal sealed record ApiFigure(string Of, string What, string AsItIs, string AsDrafted);

/// <summary>How rack files are written and read, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow)]
[JsonSerializable(typeof(ApiRackFile))]
[JsonSerializable(typeof(ApiDraft))]
[JsonSerializable(typeof(ApiDraftText))]
internal sealed partial class ApiRackFileJson : JsonSerializerContext;
