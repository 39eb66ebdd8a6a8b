using System.Globalization;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;
using NodaTime.TimeZones;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>A local date and time of the site, such as <c>2026-03-29 01:30</c>. One that the clocks skip means the first
/// moment after the gap; one that comes twice means the first time.</summary>
internal sealed class LocalMomentKind(DateTimeZone zone) : ScalarKind<Instant>
{
    private static readonly LocalDateTimePattern Pattern = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    public override string Expected => "a local date and time, such as `2026-03-29 01:30`";

    public override JsonObject Describe(SchemaWriter schema) => new() { ["type"] = "string" };

    protected override Misfit? Parse(string text, out Instant value)
    {
        var parsed = Pattern.Parse(text.Replace('T', ' '));
        if (!parsed.Success || parsed.Value.Year is < 2000 or > 2100)
        {
            value = default;
            return new Misfit(parsed.Success ? "outside 2000 to 2100" : "not a date and time");
        }

        value = parsed.Value.InZone(zone, Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter))
            .ToInstant();
        return null;
    }
}

/// <summary>When something happens in a run: time since its start (<c>2 d 3 h</c>), or a local date and time.</summary>
internal sealed class ScenarioTimeKind(DateTimeZone zone, Instant start) : Kind<Duration>
{
    private readonly DurationKind elapsed = new("0 s", "366 d", "");
    private readonly LocalMomentKind local = new(zone);

    public override string Expected => "the time since the start, such as `2 d 3 h`, or a local date and time, such as `2026-03-29 01:30`";

    public override bool TryRead(string name, Node node, Complaints complaints, [MaybeNullWhen(false)] out Duration value)
    {
        if (node is not ScalarNode scalar || scalar.Text.Length < 10 || scalar.Text[4] != '-')
        {
            return elapsed.TryRead(name, node, complaints, out value);
        }

        value = default;
        if (!local.TryRead(name, node, complaints, out var instant))
        {
            return false;
        }

        value = instant - start;
        if (value < Duration.Zero)
        {
            complaints.Refuse(
                node.Place, string.Create(CultureInfo.InvariantCulture, $"`{name}` is {Quote.Text(scalar.Text)}, before the start"),
                "choose a later time, or start the scenario earlier");
            return false;
        }

        return true;
    }

    public override JsonObject Describe(SchemaWriter schema) => new() { ["type"] = "string" };
}
