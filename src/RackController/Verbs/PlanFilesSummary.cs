using System.Collections.Immutable;
using RackController.Growing;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary>What was understood of the files that a plan is made of.</summary>
internal static class PlanFilesSummary
{
    /// <summary>Prints what an orders file asks for.</summary>
    /// <param name="path">The file.</param>
    /// <param name="request">What it asks for.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(string path, PlanRequest request, IAnsiConsole console)
    {
        var orders = request.Orders;
        var (customers, crops) =
            (orders.Select(order => order.Customer).Distinct().Count(), orders.Select(order => order.Crop.Name).Distinct().Count());
        console.WriteLine($"{path} is right.");
        Say(
            $"It is an orders file for {request.Site}, from {PlanDates.Day(request.Today)} until {PlanDates.Day(request.Until)}: "
            + $"{Count(orders.Length, "delivery", "deliveries")} of {Count(crops, "crop", "crops")} for "
            + $"{Count(customers, "customer", "customers")}, beside {Count(request.Growing.Length, "batch", "batches")} that "
            + $"{(request.Growing.Length == 1 ? "grows" : "grow")} already.", console);
        Say("`plan` makes dates of it.", console);
    }

    /// <summary>Prints which crops a crops file has.</summary>
    /// <param name="path">The file.</param>
    /// <param name="crops">The crops.</param>
    /// <param name="console">Where to print.</param>
    public static void Print(string path, ImmutableArray<Crop> crops, IAnsiConsole console)
    {
        console.WriteLine($"{path} is right.");
        var names = string.Join(", ", crops.Select(crop => crop.Name));
        Say($"It is a crops file of {Count(crops.Length, "crop", "crops")}: {names}.", console);
        Say("Orders name it under `crops`, and say under `own-crops` what they know better.", console);
    }

    private static string Count(int count, string one, string many) => $"{count} {(count == 1 ? one : many)}";

    private static void Say(string text, IAnsiConsole console)
    {
        foreach (var line in Wrapping.Lines(text, console.Profile.Width))
        {
            console.WriteLine(line);
        }
    }
}
