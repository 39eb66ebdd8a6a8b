using System.Collections.Immutable;
using RackController.Growing;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.PlanFiles;

/// <summary>Crops by name, put together from what ships and what the grower says otherwise.</summary>
internal sealed class CropBook
{
    private readonly Dictionary<string, Crop> crops = new(StringComparer.Ordinal);

    /// <summary>The names of all crops.</summary>
    public ImmutableArray<string> Names => [.. crops.Keys];

    /// <summary>The crop of a name; null where there is none.</summary>
    /// <param name="name">As written.</param>
    public Crop? Find(string name) => crops.GetValueOrDefault(name);

    /// <summary>The crop of a name; null where there is none, which is complained of.</summary>
    /// <param name="name">As written.</param>
    /// <param name="place">Where.</param>
    /// <param name="complaints">Where to say so.</param>
    public Crop? Find(string name, Place place, Complaints complaints)
    {
        var crop = Find(name);
        if (crop is null)
        {
            complaints.Refuse(place, $"there is no crop {Quote.Text(name)}", NearestName.Advice(name, Names));
        }

        return crop;
    }

    /// <summary>Takes crops in; what one does not say stays as it was.</summary>
    /// <param name="parts">As written.</param>
    /// <param name="complaints">Where to say what is missing.</param>
    public void Add(ImmutableArray<CropPart> parts, Complaints complaints)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var part in parts)
        {
            if (!seen.Add(part.Name))
            {
                complaints.Refuse(part.Place, $"the crop {Quote.Text(part.Name)} stands here a second time", "keep one of them");
            }
            else if (Whole(part, Find(part.Name), complaints) is { } crop)
            {
                crops[part.Name] = crop;
            }
        }
    }

    private static Crop? Whole(CropPart part, Crop? known, Complaints complaints)
    {
        var missing = new List<string>();
        T Of<T>(T? written, T? before, string key)
            where T : struct
        {
            if (written is null && before is null)
            {
                missing.Add(key);
            }

            return written ?? before ?? default;
        }

        var crop = new Crop
        {
            Name = part.Name,
            Kind = Of(part.Kind, known?.Kind, "kind"),
            Soak = Of(part.Soak, known?.Soak, "soak"),
            DarkDays = Of(part.DarkDays, known?.DarkDays, "dark"),
            LitStages = Of(part.Stages, known?.LitStages, "stages"),
            SeedGPerTray = Of(part.SeedG, known?.SeedGPerTray, "seed"),
            YieldGPerTray = Of(part.YieldG, known?.YieldGPerTray, "yield"),
            KeepsDays = Of(part.KeepsDays, known?.KeepsDays, "keeps"),
            AirC = Of(part.AirC, known?.AirC, "air"),
        };
        if (missing.Count == 0)
        {
            return crop;
        }

        complaints.Refuse(
            part.Place, $"the crop {Quote.Text(part.Name)} lacks {string.Join(", ", missing.Select(key => $"`{key}`"))}",
            "write them; only of a crop that is known already may something be left out");
        return null;
    }
}
