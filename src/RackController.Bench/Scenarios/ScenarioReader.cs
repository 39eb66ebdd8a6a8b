using System.Collections.Immutable;
using NodaTime;
using RackController.Bench.Binding;
using RackController.RackFile;
using RackController.RackFile.Binding;

namespace RackController.Bench;

/// <summary>What reading a scenario came to.</summary>
/// <param name="Scenario">The scenario; null when it cannot be run.</param>
/// <param name="Complaints">Everything that is wrong with it or with its rack file, each with its file.</param>
/// <param name="CouldBeRead">Whether there was a file to judge at all.</param>
public sealed record ScenarioReading(Scenario? Scenario, ImmutableArray<Complaint> Complaints, bool CouldBeRead = true);

/// <summary>
/// Reads scenario files. A scenario is YAML of our own:
/// <code>
/// about: What this scenario proves, in a sentence or two.
/// rack-file: ../demo-four-tier.yaml      # as seen from the scenario
/// start: 2026-03-28 00:00                # local time of the site
/// length: 3 d
/// found: { crop: seedlings }             # how the rack is found; optional
/// room:                                  # the room's air over every day; optional
///   - { at: 06:00, air: 18 °C, humidity: 60 % }
///   - { at: 15:00, air: 24 °C, humidity: 45 % }
/// events:                                # what happens from outside; optional
///   - at: 1 d 12 h                       # since the start, or a local date and time
///     name: the breaker trips
///     fault: breaker-trip
///     circuit: cellar sockets
///     for: 20 min
/// expect:                                # what must hold
///   - that: nothing of the circuit is on for a minute after its supply is back
///     within: 5 s
///     of: { happens: the breaker trips }
///     then: { load: basil/pump, is: off }
/// accepts:                               # hazards that only a wired part can stop; optional
///   - hazard: water-on-the-floor
///     backstop: the float cutout in the pump's supply
/// </code>
/// Whatever a person may have written, the answer is complaints and never an exception.
/// </summary>
public static class ScenarioReader
{
    /// <summary>Reads a scenario and its rack file.</summary>
    /// <param name="path">Its path, which complaints repeat.</param>
    public static ScenarioReading Read(string path)
    {
        var complaints = new Complaints(path);
        var outcome = TextFile.Read(path, complaints, out var text);
        if (outcome != TextFileOutcome.Read)
        {
            return new ScenarioReading(null, complaints.Sorted(), CouldBeRead: outcome != TextFileOutcome.Unreadable);
        }

        return YamlText.Read(text, complaints) is { } root
            ? Bind(path, root, complaints)
            : new ScenarioReading(null, complaints.Sorted());
    }

    private static ScenarioReading Bind(string path, MappingNode root, Complaints complaints)
    {
        if (FileRecognition.KindOf(root) == PlainFile.Rack)
        {
            complaints.Refuse(
                Place.Start, "this is a rack file, and a scenario belongs here",
                "name a scenario, or write one that names this file under `rack-file`");
            return new ScenarioReading(null, complaints.Sorted());
        }

        if (Scalar(root, "rack-file") is not { } named)
        {
            complaints.Refuse(
                Place.Start, "the scenario names no rack file", "write `rack-file:` and its path as seen from the scenario");
            return new ScenarioReading(null, complaints.Sorted());
        }

        var rack = ReadRack(path, named, complaints);
        if (rack.Site is not { } site)
        {
            return new ScenarioReading(null, [.. complaints.Sorted(), .. rack.Complaints]);
        }

        var start = Instant.FromUtc(2000, 1, 1, 0, 0);
        if (Scalar(root, "start") is { } begin
            && new LocalMomentKind(site.Zone).TryRead("start", begin, new Complaints(path), out var read))
        {
            start = read;
        }

        var isSound = new ScenarioMapping(path, site, start, EventNames(root)).TryRead("scenario", root, complaints, out var scenario);
        return new ScenarioReading(isSound && !complaints.HasErrors ? scenario : null, complaints.Sorted());
    }

    private static RackFileResult ReadRack(string path, ScalarNode named, Complaints complaints)
    {
        var rackPath = Path.Combine(Path.GetDirectoryName(path) ?? "", named.Text);
        var rack = RackFileReader.Read(rackPath);
        if (rack.Site is null)
        {
            complaints.Refuse(
                named.Place, $"the rack file {Quote.Text(named.Text)} cannot be used", "see what is said of it, and put it right first");
        }

        return rack;
    }

    private static ScalarNode? Scalar(MappingNode root, string key) =>
        root.Entries.FirstOrDefault(entry => entry.Key == key)?.Value as ScalarNode;

    private static ImmutableArray<string> EventNames(MappingNode root) =>
        root.Entries.FirstOrDefault(entry => entry.Key == "events")?.Value is ListNode list
            ? [.. list.Items.OfType<MappingNode>().SelectMany(NamesOf).Distinct(StringComparer.Ordinal)]
            : [];

    private static IEnumerable<string> NamesOf(MappingNode happening)
    {
        if (Scalar(happening, "name") is { } name)
        {
            yield return name.Text;
            yield return $"end of {name.Text}";
        }
    }
}
