using NodaTime;
using RackController.Bench;
using RackController.Growing;
using RackController.Model;
using RackController.Plant;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>What somebody wants to know of a rack file.</summary>
/// <param name="DailyLightMolPerM2">The daily light integral that is wanted; null for none.</param>
/// <param name="DepletedShare">Share of their water that media may lose.</param>
/// <param name="LongestWet">How long a flood may keep roots wet.</param>
/// <param name="MoreA">What else would be plugged in, A; null for nothing.</param>
/// <param name="Mix">A stock solution; null for none.</param>
/// <param name="NowMsPerCm">Conductivity of the reservoir now; null where nobody measured it.</param>
internal sealed record AdviceWishes(
    double? DailyLightMolPerM2, double DepletedShare, Duration LongestWet, double? MoreA, StockMix? Mix, double? NowMsPerCm);

/// <summary>Advice on a rack file with its arithmetic, rack by rack and circuit by circuit.</summary>
internal sealed class AdvicePage(IAnsiConsole console)
{
    /// <summary>Prints it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="wishes">What somebody wants to know.</param>
    public void Print(Site site, AdviceWishes wishes)
    {
        console.WriteLine(site.Name);
        var thirsts = TierThirst.Of(site);
        foreach (var rack in site.Racks)
        {
            console.WriteLine();
            console.WriteLine(rack.Name);
            PrintLight(rack, wishes);
            if (rack.Schedule.Floods.Times is not NoFloods)
            {
                Print("floods", MediaWords.Lines(
                    rack, FloodSurvey.Of(site, rack), thirsts[rack.Id.Index], wishes.DepletedShare, wishes.LongestWet));
            }

            Print("mixing", wishes.Mix?.Lines(rack.Reservoir, wishes.NowMsPerCm) ?? []);
            Print("floor", [ForecastWords.Floor(FloorLoad.Of(rack, ForecastTerms.Usual.TrayKg))]);
        }

        foreach (var circuit in site.Circuits)
        {
            console.WriteLine();
            Print(circuit.Name, CircuitHeadroom.Of(site, circuit).Lines(wishes.MoreA), "");
        }

        console.WriteLine();
        if (wishes.Mix is not null)
        {
            Wrapped(StockMix.Limits);
        }

        Wrapped(ForecastWords.Caution);
    }

    // Tiers that are alike are one line.
    private void PrintLight(Rack rack, AdviceWishes wishes)
    {
        var alike = rack.Tiers.Where(tier => tier.InUse && tier.Light is not null && tier.PpfdUmolPerM2S > 0)
            .GroupBy(tier => (tier.PpfdUmolPerM2S, Lit: rack.Schedule.Lights[tier.Number - 1]?.Length ?? Duration.Zero));
        foreach (var tiers in alike)
        {
            var numbers = tiers.Select(tier => tier.Number).ToList();
            Print(
                $"light of {(numbers.Count == 1 ? "tier" : "tiers")} {string.Join(", ", numbers)}",
                LightAdvice.Lines(tiers.Key.PpfdUmolPerM2S, tiers.Key.Lit, wishes.DailyLightMolPerM2));
        }
    }

    private void Print(string title, IEnumerable<string> lines, string indent = "  ")
    {
        var all = lines.ToList();
        if (all.Count == 0)
        {
            return;
        }

        console.WriteLine($"{indent}{title}");
        foreach (var line in all)
        {
            Wrapped($"{indent}  {line}");
        }
    }

    private void Wrapped(string text)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width))
        {
            console.WriteLine(line);
        }
    }
}
