using System.Globalization;
using System.Text;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Support;

/// <summary>A random scenario in words, for whoever has to understand why it failed.</summary>
internal static class SceneWords
{
    public static string Of(Scenario scene)
    {
        var site = scene.Site;
        var text = new StringBuilder("\n");
        Line($"From {LogText.LocalTime(site, scene.Start)} for {Seconds(scene.Length)}, scanned every {site.Scan.Period}");
        Line($"{scene.Found}, room {scene.Room}");
        foreach (var happening in scene.Events)
        {
            Line($"At {Seconds(happening.At)}: {EventWords.Of(site, happening)}{Size(happening)}");
        }

        foreach (var expectation in scene.Expectations)
        {
            Line($"{Words(site, expectation)}");
        }

        return text.Append(SiteWords.Of(site)).ToString();

        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }

    private static string Words(Site site, Expectation expectation)
    {
        var window = $"from {Seconds(expectation.Window.From)} to {Seconds(expectation.Window.Until)}";
        return expectation switch
        {
            Always always => $"Always {window}: {always.What.Words(site)} while {always.While?.Words(site)}",
            Never never => $"Never {window}: {never.What.Words(site)} while {never.While?.Words(site)}",
            Within within => $"Within {Seconds(within.Limit)} of {within.Of.Words(site)} {window}: {within.Then.Words(site)}",
            Recovers recovers => $"Recovers within {Seconds(recovers.Limit)} of {recovers.Of.Words(site)} {window}",
            _ => throw new InvariantBrokenException("every kind of expectation has its words"),
        };
    }

    private static string Size(ScenarioEvent happening) => happening is RackFails { Fault: var fault }
        ? string.Create(CultureInfo.InvariantCulture, $" of {fault.Size} until {Seconds(fault.Until - MonotonicTime.Zero)}")
        : "";

    private static string Seconds(Duration length) =>
        string.Create(CultureInfo.InvariantCulture, $"{length.TotalSeconds:0.#########} s");
}
