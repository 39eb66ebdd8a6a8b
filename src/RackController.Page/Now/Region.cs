using System.Collections.Immutable;

namespace RackController.Page;

/// <summary>A part of the page that is sent again when it changes.</summary>
/// <param name="Id">What the page knows it by.</param>
/// <param name="Kind">What it shows, for the style.</param>
/// <param name="Html">Its content.</param>
public sealed record Region(string Id, string Kind, string Html);

/// <summary>The first page.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Regions">Its parts, in order.</param>
public sealed record NowPage(FrameView Frame, ImmutableArray<Region> Regions)
{
    /// <summary>What stands above all.</summary>
    public IEnumerable<Region> Head => Regions.Where(region => region.Kind is "line" or "alarms");

    /// <summary>The racks.</summary>
    public IEnumerable<Region> Racks => Regions.Where(region => region.Kind == "rack");

    /// <summary>What belongs to the whole site.</summary>
    public IEnumerable<Region> Beside => Regions.Where(region => region.Kind is "circuits" or "due");
}
