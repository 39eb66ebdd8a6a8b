using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;
using RackController.Testing;

namespace RackController.Notices.Tests;

/// <summary>The site of the demo, with alarms that are made up.</summary>
internal static class Cellar
{
    public const string Water = "north/high-water";
    public const string Heat = "north/air-too-hot";
    public const string Cold = "north/water-temperature";

    public static readonly Instant Noon = Instant.FromUtc(2026, 6, 1, 11, 0);

    public static Site Site { get; } = RackFileReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml")).Site!;

    public static AlarmBook Alarms { get; } = new(Site);

    /// <summary>The site with notices.</summary>
    public static Site WithNotices(QuietHours? quiet = null) =>
        Site with { Notices = new NoticePlan { Quiet = quiet, RemindAfter = Duration.FromMinutes(30) } };

    public static ControlEvent Alarm(string key, AlarmState state, Instant at, string because = "of a test") =>
        Event(EventKind.Alarm, key, state.InWords(), at, because);

    public static ControlEvent Controller(string what, Instant at, string because = "of a test") =>
        Event(EventKind.Controller, Site.Name, what, at, because);

    private static ControlEvent Event(EventKind kind, string subject, string what, Instant at, string because) =>
        new(new Moment(MonotonicTime.Zero + (at - Noon + Duration.FromDays(4000)), at, true), kind, subject, what, because);
}
