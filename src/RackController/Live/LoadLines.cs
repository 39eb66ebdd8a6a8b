using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Live;

/// <summary>Every load, on or off, and why.</summary>
internal static class LoadLines
{
    private const int WidestName = 28;

    /// <summary>Lays them out, one a line.</summary>
    /// <param name="site">The site.</param>
    /// <param name="status">What to show.</param>
    /// <param name="chosen">The rack to show; null for all.</param>
    /// <param name="width">Columns.</param>
    public static List<StyledLine> Of(Site site, SiteStatus status, RackId? chosen, int width)
    {
        var shown = status.Loads.Where(why => chosen is null || site[why.Load].Rack == chosen).ToList();
        var names = shown.ConvertAll(why => Names.Short(site, site[why.Load].Name, chosen));
        var nameWidth = Math.Min(WidestName, names.Select(name => name.Length).DefaultIfEmpty(0).Max() + 1);
        return [.. shown.Zip(names, (why, name) => Line(why, name, nameWidth, width))];
    }

    private static StyledLine Line(LoadWhy why, string name, int nameWidth, int width)
    {
        var isOn = why.State == SwitchState.On;
        var isHeldBack = why.Interlocks.Contains(why.Summary);
        return new StyledLine()
            .Add(isOn ? "● on   " : "○ off  ", isOn ? Tone.Strong : Tone.Quiet)
            .AddColumn(name, nameWidth, isOn ? Tone.Plain : Tone.Quiet)
            .AddRest(why.Summary, width, isHeldBack ? Tone.Caution : Tone.Quiet);
    }
}
