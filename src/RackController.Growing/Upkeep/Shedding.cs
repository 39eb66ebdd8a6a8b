using RackController.Model;

namespace RackController.Growing;

/// <summary>How much of itself a media gives to the water: what it sheds clogs screens, weeps and pipes.</summary>
public enum Shedding
{
    /// <summary>Next to nothing: stone wool, foam, clay pebbles, a plain tray.</summary>
    Little,

    /// <summary>Some fibres: mats of hemp, jute, felt or wool.</summary>
    Some,

    /// <summary>Crumbs and fines all the time: coir, peat, soil, compost; and whatever is not known.</summary>
    Much,
}

/// <summary>Tells it of a media by its words (common practice, no source). The media of a rack file are the grower's own words: one that
/// is not known here is taken as shedding much, so that its upkeep comes too soon rather than too late.</summary>
public static class MediaShedding
{
    private static readonly string[] little = ["rockwool", "rock wool", "stone wool", "foam", "clay", "pebble", "gravel", "none"];
    private static readonly string[] some = ["mat", "pad", "felt", "jute", "hemp", "wool", "paper", "cloth", "burlap"];
    private static readonly string[] much = ["coir", "coco", "peat", "soil", "compost", "vermiculite", "perlite"];

    /// <summary>How much a media sheds. Words of what sheds more count first, so that a mat of coir sheds as coir does.</summary>
    /// <param name="media">The media in the grower's words.</param>
    public static Shedding Of(string media)
    {
        ArgumentNullException.ThrowIfNull(media);
        return HasAny(media, much) ? Shedding.Much
            : HasAny(media, little) ? Shedding.Little
            : HasAny(media, some) ? Shedding.Some
            : Shedding.Much;
    }

    /// <summary>The media of a rack that sheds most: all of its tiers share one water. The lowest tier's of those that are alike.</summary>
    /// <param name="rack">The rack.</param>
    public static string MostOf(Rack rack)
    {
        ArgumentNullException.ThrowIfNull(rack);
        return rack.Tiers.Select(tier => tier.Tray.Contents.Media).MaxBy(Of)!;
    }

    private static bool HasAny(string media, string[] words) => words.Any(word => media.Contains(word, StringComparison.OrdinalIgnoreCase));
}
