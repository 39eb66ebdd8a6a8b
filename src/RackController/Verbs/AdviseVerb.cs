using System.CommandLine;
using NodaTime;
using RackController.Growing;

namespace RackController.Verbs;

/// <summary><c>advise FILE</c>: light, floods, circuits, floor and mixing of a rack file, with the arithmetic.</summary>
internal static class AdviseVerb
{
    private static readonly Option<double?> dailyLight = Wish(
        "--dli", "mol", 0.1, 60, "The daily light integral that is wanted, mol/m2/d.", "12");

    // 30 %: the depletion fraction of lettuce in table 22 of FAO Irrigation and Drainage Paper 56 (from memory).
    private static readonly Option<double> depletion = Figure(
        "--depletion", "percent", 1, 90, 30,
        "How much of their water media may lose before the next flood, %. Default 30, as for lettuce in a field.", "30");

    private static readonly Option<double> wet = Figure(
        "--wet", "minutes", 1, 240, 30, "How long a flood may keep roots wet, min. Default 30; common practice, no source.", "30");

    private static readonly Option<double?> more = Wish(
        "--more", "amperes", 0.01, 63, "What else would be plugged into each circuit, A.", "2");

    private static readonly Option<double?> stock = Wish(
        "--stock", "mS/cm", 0.001, 100, "What 1 mL of a stock solution, made up to 1 L, adds: prints a mixing table.", "0.25");

    private static readonly Option<double> target = Figure(
        "--target", "mS/cm", 0, 10, ForecastTerms.Usual.TargetMsPerCm, "Conductivity that is mixed to, mS/cm at 25 °C. Default 1.", "1.2");

    private static readonly Option<double> tap = Figure(
        "--tap", "mS/cm", 0, 10, ForecastTerms.Usual.TapMsPerCm, "Conductivity of the tap's water, mS/cm at 25 °C. Default 0.3.", "0.3");

    private static readonly Option<double?> now = Wish(
        "--now", "mS/cm", 0, 10, "Conductivity of the reservoir now, to correct it.", "0.8");

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("A rack file, such as config/demo-four-tier.yaml.");
        var verb = new Command("advise", "Work out light, floods, circuits, floor load and mixing, with the arithmetic.")
        {
            file, dailyLight, depletion, wet, more, stock, target, tap, now,
        };
        verb.SetAction(parsed => Run(parsed, parsed.GetRequiredValue(file)));
        return verb;
    }

    private static int Run(ParseResult parsed, FileInfo file)
    {
        var console = parsed.InvocationConfiguration;
        if (RackFileArgument.Read(file.ToString(), console.Error) is not { } site)
        {
            return ExitCode.AnswerIsNo;
        }

        if (parsed.GetValue(stock) is null && ((Option[])[target, tap, now]).FirstOrDefault(one => IsGiven(parsed, one)) is { } idle)
        {
            console.Error.WriteLine($"{idle.Name} belongs to a mixing table: write --stock too");
            return ExitCode.WrongUse;
        }

        var mix = parsed.GetValue(stock) is { } adds ? new StockMix(parsed.GetValue(tap), parsed.GetValue(target), adds) : null;
        if (mix is not null && Wrong(mix) is { } wrong)
        {
            console.Error.WriteLine(wrong);
            return ExitCode.WrongUse;
        }

        new AdvicePage(Screen.Over(console.Output)).Print(site, new AdviceWishes(
            parsed.GetValue(dailyLight), parsed.GetValue(depletion) / 100, Duration.FromMinutes(parsed.GetValue(wet)),
            parsed.GetValue(more), mix, parsed.GetValue(now)));
        return ExitCode.AsExpected;
    }

    private static bool IsGiven(ParseResult parsed, Option option) => parsed.GetResult(option) is { Implicit: false };

    private static string? Wrong(StockMix mix) =>
        mix.TargetMsPerCm < mix.TapMsPerCm ? "--target is weaker than --tap, and no stock makes water weaker: write at least as much"
        : !mix.IsPossible ? "--stock is too weak to reach --target: write what 1 mL of it, made up to 1 L, adds"
        : null;

    private static Option<double?> Wish(string name, string unit, double least, double most, string about, string example) => new(name)
    {
        HelpName = unit,
        Description = about,
        CustomParser = result => Parsing.Number(least, most, result, Wanted(name, least, most, example)),
    };

    private static Option<double> Figure(
        string name, string unit, double least, double most, double usual, string about, string example) =>
        new(name)
        {
            HelpName = unit,
            Description = about,
            DefaultValueFactory = _ => usual,
            CustomParser = result => Parsing.Number(least, most, result, Wanted(name, least, most, example)),
        };

    private static string Wanted(string name, double least, double most, string example) =>
        $"{name} takes a number from {least} to {most}, such as {example}";
}
