using System.Collections.Immutable;
using RackController.Page.Slices;
using RazorSlices;

namespace RackController.Page;

/// <summary>Writes the parts of the first page: the same for whoever opens it and for whoever follows it.</summary>
internal static class NowRegions
{
    /// <summary>Writes every part of a view.</summary>
    public static async Task<ImmutableArray<Region>> RenderAsync(NowView view)
    {
        var regions = ImmutableArray.CreateBuilder<Region>();
        regions.Add(new Region("line", "line", await Line.Create(view).RenderAsync().ConfigureAwait(false)));
        regions.Add(new Region("alarms", "alarms", await Alarms.Create(view).RenderAsync().ConfigureAwait(false)));
        foreach (var rack in view.Racks)
        {
            regions.Add(new Region($"rack-{rack.Index}", "rack", await RackNow.Create(rack).RenderAsync().ConfigureAwait(false)));
        }

        regions.Add(new Region("circuits", "circuits", await Circuits.Create(view).RenderAsync().ConfigureAwait(false)));
        regions.Add(new Region("due", "due", await Due.Create(view).RenderAsync().ConfigureAwait(false)));
        return regions.ToImmutable();
    }
}
