using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Growing;

/// <summary>One day of a reservoir.</summary>
/// <param name="Date">The day.</param>
/// <param name="TapL">Water that is let in from the tap, L; 0 on most days.</param>
/// <param name="SaltsG">Salts that are put in, g.</param>
/// <param name="EveningL">Water in it at the end of the day, L.</param>
/// <param name="EveningMsPerCm">Its conductivity then, mS/cm.</param>
/// <param name="Care">What somebody does to it in the morning.</param>
public sealed record ReservoirDay(
    LocalDate Date, double TapL, double SaltsG, double EveningL, double EveningMsPerCm, ReservoirCare Care);

/// <summary>What somebody does to a reservoir.</summary>
public enum ReservoirCare
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Fills it up to its normal volume, and brings it back to its target.</summary>
    TopUp,

    /// <summary>Empties it and mixes it anew.</summary>
    Change,

    /// <summary>Empties it, floods once with plain water, throws that away, and mixes it anew.</summary>
    Flush,
}

/// <summary>
/// A reservoir from day to day: crops take water and salts, people come on their work days. It is full and fresh on the first morning.
/// Somebody tops it up on the last work day on which that is still in time, and changes it on the last one that is not too late.
/// </summary>
public sealed class ReservoirDays
{
    private const int DaysPerWeek = 7;

    private readonly double normalL;
    private readonly double lowestL;
    private readonly ForecastTerms terms;
    private readonly WorkDays work;
    private readonly LocalDate first;
    private readonly ImmutableArray<RackDayUse> uses;
    private double volumeL;
    private double saltsG;
    private LocalDate changed;
    private LocalDate flushed;

    private ReservoirDays(
        Reservoir tank, double lowestL, ForecastTerms terms, PlanRequest request, ImmutableArray<RackDayUse> uses)
    {
        normalL = tank.NormalVolumeL;
        this.lowestL = lowestL;
        this.terms = terms;
        work = request.Work;
        first = request.Today;
        this.uses = uses;
        volumeL = normalL;
        saltsG = SaltsIn(normalL, terms.TargetMsPerCm);
        changed = terms.Changed ?? first;
        flushed = terms.Flushed ?? first;
    }

    /// <summary>The days of a reservoir.</summary>
    /// <param name="tank">The reservoir.</param>
    /// <param name="lowestL">Volume below which a flood is stopped, L.</param>
    /// <param name="terms">What it is filled with and how often.</param>
    /// <param name="request">First day and work days.</param>
    /// <param name="uses">What each day takes, from the first day on.</param>
    public static ImmutableArray<ReservoirDay> Of(
        Reservoir tank, double lowestL, ForecastTerms terms, PlanRequest request, ImmutableArray<RackDayUse> uses)
    {
        ArgumentNullException.ThrowIfNull(tank);
        ArgumentNullException.ThrowIfNull(terms);
        ArgumentNullException.ThrowIfNull(request);
        var days = new ReservoirDays(tank, lowestL, terms, request, uses);
        return [.. Enumerable.Range(0, uses.Length).Select(days.Pass)];
    }

    /// <summary>How many whole days a full reservoir lasts from the first on when nobody comes; null when it lasts all of them.</summary>
    /// <param name="tank">The reservoir.</param>
    /// <param name="lowestL">Volume below which a flood is stopped, L.</param>
    /// <param name="uses">What each day takes, from the first day on.</param>
    public static int? LastsDays(Reservoir tank, double lowestL, ImmutableArray<RackDayUse> uses)
    {
        ArgumentNullException.ThrowIfNull(tank);
        return FirstDry(tank.NormalVolumeL, lowestL, uses, 0, uses.Length);
    }

    private ReservoirDay Pass(int index)
    {
        var day = first.PlusDays(index);
        var (care, tapL, addedG) = work.Has(day) ? Care(index, day) : (ReservoirCare.None, 0, 0);

        // What crops take up follows the strength of what they drink.
        var strength = Math.Max(0, saltsG) / SaltsIn(volumeL, terms.TargetMsPerCm);
        var takenG = double.IsFinite(strength) ? uses[index].CropSaltsG * strength : 0;
        saltsG = Math.Max(0, saltsG - takenG);
        volumeL = Math.Max(0, volumeL - uses[index].WaterL);
        return new ReservoirDay(
            day, tapL, addedG, volumeL, volumeL > 0 ? saltsG / volumeL / Conductivity.GPerLPerMsPerCm : 0, care);
    }

    private (ReservoirCare Care, double TapL, double AddedG) Care(int index, LocalDate day)
    {
        var next = NextWorkDay(day);
        if (changed.PlusDays(terms.ChangeEveryDays) < next && (day > changed || terms.Changed is not null))
        {
            changed = day;
            var flushes = flushed.PlusDays(terms.FlushEveryDays) < day.PlusDays(terms.ChangeEveryDays);
            flushed = flushes ? day : flushed;
            volumeL = 0;
            saltsG = 0;
            var (tapL, addedG) = Fill();
            return flushes ? (ReservoirCare.Flush, tapL + normalL, addedG) : (ReservoirCare.Change, tapL, addedG);
        }

        if (index > 0 && FirstDry(volumeL, lowestL, uses, index, index + Period.DaysBetween(day, next)) is not null)
        {
            var (tapL, addedG) = Fill();
            return (ReservoirCare.TopUp, tapL, addedG);
        }

        return (ReservoirCare.None, 0, 0);
    }

    // Tap water brings salts of its own; what has grown too strong is left to the next change.
    private (double TapL, double AddedG) Fill()
    {
        var tapL = normalL - volumeL;
        saltsG += SaltsIn(tapL, terms.TapMsPerCm);
        volumeL = normalL;
        var addedG = Math.Max(0, SaltsIn(normalL, terms.TargetMsPerCm) - saltsG);
        saltsG += addedG;
        return (tapL, addedG);
    }

    private LocalDate NextWorkDay(LocalDate day)
    {
        var next = day.PlusDays(1);
        while (!work.Has(next) && next < day.PlusDays(DaysPerWeek))
        {
            next = next.PlusDays(1);
        }

        return next;
    }

    private static double SaltsIn(double volumeL, double msPerCm) => volumeL * msPerCm * Conductivity.GPerLPerMsPerCm;

    // How many days pass before the first on which a flood would be stopped; null where none of them is.
    private static int? FirstDry(double volumeL, double lowestL, ImmutableArray<RackDayUse> uses, int from, int until)
    {
        for (var index = from; index < Math.Min(until, uses.Length); index++)
        {
            if (volumeL - uses[index].DrawnDownL < lowestL)
            {
                return index - from;
            }

            volumeL -= uses[index].WaterL;
        }

        return null;
    }
}
