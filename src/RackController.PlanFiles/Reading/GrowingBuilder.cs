using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.PlanFiles;

/// <summary>Makes batches of trays that grow already, and complains of what cannot be so on the plan's first day.</summary>
/// <param name="book">The crops.</param>
/// <param name="complaints">Where to say what is wrong.</param>
/// <param name="space">The room.</param>
/// <param name="work">On which weekdays somebody works.</param>
/// <param name="first">The plan's first day.</param>
internal sealed class GrowingBuilder(CropBook book, Complaints complaints, GrowSpace space, WorkDays work, LocalDate first)
{
    /// <summary>Makes them, as far as they are sound.</summary>
    /// <param name="parts">As written.</param>
    public ImmutableArray<Batch> Build(ImmutableArray<GrowingPart> parts)
    {
        RefuseFullTiers(parts);
        return [.. parts.Select(BatchOf).OfType<Batch>()];
    }

    // The line with which a tier overflows is named, once.
    private void RefuseFullTiers(ImmutableArray<GrowingPart> parts)
    {
        foreach (var tier in space.Tiers)
        {
            var here = parts.Where(part => part.Tier == tier.Name).ToList();
            var trays = here.Sum(part => part.Trays);
            if (trays > tier.Kind.Places)
            {
                var stand = 0;
                var over = here.First(part => (stand += part.Trays) > tier.Kind.Places);
                complaints.Refuse(
                    over.TierPlace, $"{trays} trays on {Quote.Text(tier.Name)}, which holds {tier.Kind.Places}",
                    "say where the others stand; trays of one sowing on two tiers are two lines");
            }
        }
    }

    private Batch? BatchOf(GrowingPart part)
    {
        if (book.Find(part.Crop, part.CropPlace, complaints) is not { } crop || !IsPlaced(part) || !IsPast(part))
        {
            return null;
        }

        var batch = new Batch
        {
            Crop = crop,
            Trays = part.Trays,
            Due = part.Sown.PlusDays(crop.MostDays),
            IsLive = false,
            Orders = [],
            UnderWay = new UnderWay(part.Sown, part.Lit, part.Tier, part.Place.Line) { Lot = part.Lot },
        };
        if (BatchTimings.Of(batch with { Due = LocalDate.Max(batch.Due, first) }, work, first).IsEmpty)
        {
            SayThatItIsPast(part, crop);
            return null;
        }

        return batch;
    }

    private void SayThatItIsPast(GrowingPart part, Crop crop)
    {
        var what = $"{crop.Name} sown on {part.Sown:uuuu-MM-dd} has no day left to be harvested on";
        if (part.Lot is { } lot)
        {
            complaints.Warn(
                part.Place, $"{lot} of the growing book: {what}", "it is left out of the plan: put it down as harvested or thrown away");
        }
        else
        {
            complaints.Refuse(part.Place, what, "check its dates; if they are right, it is past its time: take it out and remove it here");
        }
    }

    private bool IsPlaced(GrowingPart part)
    {
        if (part.Tier is { } tier && space.Tiers.All(one => one.Name != tier))
        {
            complaints.Refuse(part.TierPlace, $"there is no tier {Quote.Text(tier)} to grow on",
                NearestName.Advice(tier, [.. space.Tiers.Select(one => one.Name)]));
            return false;
        }

        if (part.Lit is null == part.Tier is null)
        {
            return true;
        }

        complaints.Refuse(
            part.Place, part.Tier is null ? "trays in the light without a tier" : "trays in the dark on a tier",
            part.Tier is null ? "write on which `tier:` they stand, or leave `lit:` out while they are dark"
                : "write since when they are `lit:`, or leave `tier:` out while they are dark");
        return false;
    }

    private bool IsPast(GrowingPart part)
    {
        var wrong = part.Sown > first ? $"`sown` is after the plan's first day, {first:uuuu-MM-dd}"
            : part.Lit > first ? $"`lit` is after the plan's first day, {first:uuuu-MM-dd}"
            : part.Lit < part.Sown ? "`lit` is before `sown`"
            : null;
        if (wrong is not null)
        {
            complaints.Refuse(part.Place, wrong, "write the day on which it was done; what is still to be done is planned");
        }

        return wrong is null;
    }
}
