using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using RackController.Model;

namespace RackController.Growing;

/// <summary>What the batches on a rack ask of its schedule.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="Asked">What is asked beside what the grower wrote; nothing where that suits.</param>
/// <param name="Disagreements">Who does not agree with whom, or with the rack, in words; the schedule stays as it is written there.</param>
public sealed record RackAsks(Rack Rack, BatchSchedule Asked, ImmutableArray<string> Disagreements)
{
    /// <summary>Whether the rack runs by something else now.</summary>
    public bool IsNews => !Asked.IsLike(Rack.ForBatches);

    /// <summary>What would be other than it is, in words.</summary>
    public ImmutableArray<string> Changes => BatchAskWords.Changes(this);
}

/// <summary>
/// Works out what schedule suits what stands on the tiers: as near to what the grower wrote as the stages bear. Batches that share a tier
/// share its lamp, and all tiers of a rack share its floods. A tier of which the book has never told keeps what is written; one that the
/// book has seen emptied is dark, and a rack of such tiers only is not flooded.
/// </summary>
public static class BatchAsks
{
    // A lamp is set to the quarter of an hour, where there is one that suits.
    private const int QuarterMinutes = 15;

    /// <summary>Works it out for each rack of a site.</summary>
    /// <param name="site">The site.</param>
    /// <param name="book">The growing book.</param>
    /// <param name="day">The day.</param>
    public static ImmutableArray<RackAsks> Of(Site site, GrowingBook book, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(book);
        var standing = book.StandingOn(day, site.Batches.MovesByDate);
        var known = book.TiersKnownOn(day, site.Batches.MovesByDate);
        return [.. site.Racks.Select(rack => Of(rack, standing, known))];
    }

    private static RackAsks Of(Rack rack, ImmutableArray<Standing> standing, ImmutableHashSet<string> known)
    {
        var disagreements = ImmutableArray.CreateBuilder<string>();
        var lit = rack.Tiers.Where(tier => tier.InUse && tier.Light is not null && tier.PpfdUmolPerM2S > 0).ToImmutableArray();
        var here = lit.ToImmutableDictionary(tier => tier.Number, tier => Here(rack, tier, standing));
        ImmutableArray<TierHours> hours =
            [.. lit.Select(tier => HoursOf(rack, tier, here[tier.Number], known, disagreements)).OfType<TierHours>()];
        var isEmptied = lit.Length > 0 && lit.All(tier => here[tier.Number].IsEmpty && known.Contains(NameOf(rack, tier)));
        var floods = FloodsOf(rack, [.. lit.SelectMany(tier => here[tier.Number].Select(one => (tier, one)))], isEmptied, disagreements);
        return new RackAsks(rack, new BatchSchedule(floods, hours), disagreements.DrainToImmutable());
    }

    private static ImmutableArray<Standing> Here(Rack rack, Tier tier, ImmutableArray<Standing> standing) =>
        [.. standing.Where(one => one.Tier == NameOf(rack, tier))];

    private static string NameOf(Rack rack, Tier tier) => SiteTiers.NameOf(rack, tier.Number);

    private static TierHours? HoursOf(
        Rack rack, Tier tier, ImmutableArray<Standing> here, ImmutableHashSet<string> known, ImmutableArray<string>.Builder disagreements)
    {
        if (rack.OwnSchedule.Lights[tier.Number - 1] is not { } own)
        {
            return null;
        }

        if (here.IsEmpty)
        {
            return known.Contains(NameOf(rack, tier)) && own.Length > Duration.Zero ? new TierHours(tier.Number, Duration.Zero) : null;
        }

        var allowed = here.Select(one => (one, hours: HoursFor(one, rack, tier, disagreements))).ToList();
        var common = allowed.Select(one => one.hours).Aggregate((one, other) => one.Within(other));
        if (!common.IsPossible)
        {
            disagreements.Add($"{NameOf(rack, tier)}: {BatchAskWords.Hours(allowed)} do not agree on hours of light");
            return null;
        }

        var length = Duration.FromMinutes(Set(common, own.Length.TotalHours));
        return length == own.Length ? null : new TierHours(tier.Number, length);
    }

    private static Bounds HoursFor(Standing one, Rack rack, Tier tier, ImmutableArray<string>.Builder disagreements)
    {
        if (Fit.HoursWith(one.Needs, tier.PpfdUmolPerM2S) is { IsPossible: true } hours)
        {
            return hours;
        }

        disagreements.Add(string.Create(
            CultureInfo.InvariantCulture,
            $"{NameOf(rack, tier)}: {one.Batch.Lot} ({one.Batch.Start.Crop}) cannot have its daily light from {tier.PpfdUmolPerM2S:0} "
            + $"umol/m2/s; it stays lit for as long as it bears"));
        return one.Needs.PhotoperiodH;
    }

    // Minutes a day: what is written where that suits, else the nearest quarter of an hour within, else the nearest minute.
    private static double Set(Bounds hours, double ownH)
    {
        if (hours.Holds(ownH))
        {
            return Math.Round(ownH * NodaConstants.MinutesPerHour);
        }

        var (least, most) = (hours.Least * NodaConstants.MinutesPerHour, hours.Most * NodaConstants.MinutesPerHour);
        var quarter = ownH < hours.Least
            ? Math.Ceiling(Math.Round(least, 3) / QuarterMinutes) * QuarterMinutes
            : Math.Floor(Math.Round(most, 3) / QuarterMinutes) * QuarterMinutes;
        return quarter >= least - 1e-3 && quarter <= most + 1e-3 ? quarter
            : Math.Round(hours.Nearest(ownH) * NodaConstants.MinutesPerHour);
    }

    private static int? FloodsOf(
        Rack rack, ImmutableArray<(Tier Tier, Standing One)> here, bool isEmptied, ImmutableArray<string>.Builder disagreements)
    {
        var own = rack.OwnSchedule.Starts().Length;
        if (own == 0)
        {
            return null;
        }

        if (here.IsEmpty)
        {
            return isEmptied ? 0 : null;
        }

        var wanted = here.Select(one => (one.One, floods: one.One.Needs.FloodsIn(one.Tier.Tray.Contents.Media))).ToList();
        var common = new WholeBounds(wanted.Max(one => one.floods.Least), wanted.Min(one => one.floods.Most));
        if (common.Least > common.Most)
        {
            disagreements.Add($"{rack.Name}: {BatchAskWords.Floods(wanted)} do not agree on floods a day");
            return null;
        }

        return common.Holds(own) ? null : own < common.Least ? common.Least : common.Most;
    }
}
