using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Diagnostics;
using System.Globalization;
using RackController.Bench;
using RackController.Model;
using Spectre.Console;

namespace RackController.Verbs;

/// <summary><c>campaign FILE</c>: plays every failure of the catalogue on the racks of a file and says what got through.</summary>
internal static class CampaignVerb
{
    private const int MostNear = 5;
    private const int MostQuietYears = 10_000;

    private static readonly Option<ulong> seed = new("--seed")
    {
        Description = "What everything is drawn from that is left to chance. Default 1.",
        HelpName = "number",
        DefaultValueFactory = _ => 1,
        CustomParser = SeedOf,
    };

    private static readonly Option<Shard> shard = new("--shard")
    {
        Description = "A part of the cases, such as 3/16, so that several machines can share the work.",
        HelpName = "part",
        DefaultValueFactory = _ => new Shard(1, 1),
        CustomParser = ShardOf,
    };

    private static readonly Option<bool> singles = new("--singles") { Description = "Single faults only, no pairs." };

    private static readonly Option<double?> days = new("--days")
    {
        Description = "Begin no further case once so many rack-days were tried.",
        HelpName = "rack-days",
        CustomParser = result => Parsing.Number(0, double.MaxValue, result, "--days takes a number of rack-days, such as 1000"),
    };

    private static readonly Option<ImmutableArray<string>> only = new("--only")
    {
        Description = "One mode of the catalogue, or two that strike together: weep-blocked or weep-blocked+leak-rope-dead.",
        HelpName = "mode[+mode]",
        CustomParser = ModesOf,
    };

    private static readonly Option<int> quiet = new("--quiet-years")
    {
        Description = "Site-years without a fault to look for false trips in. Default 1; 0 for none.",
        HelpName = "years",
        DefaultValueFactory = _ => 1,
        CustomParser = result => Parsing.Whole(0, MostQuietYears, result, $"--quiet-years takes a whole number from 0 to {MostQuietYears}"),
    };

    private static readonly Option<DirectoryInfo> folder = new("--out")
    {
        HelpName = "folder",
        Description = "The folder for reports and scenarios. Default: out/campaign- and the rack file's name.",
    };

    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var file = Parsing.File("A rack file, such as config/demo-four-tier.yaml.");
        var verb = new Command("campaign", "Play every failure of the catalogue on a simulated rack and say what got through.")
        {
            file, seed, shard, singles, days, only, quiet, folder,
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

        var path = parsed.GetValue(folder)?.ToString() ?? Path.Combine("out", $"campaign-{Path.GetFileNameWithoutExtension(file.Name)}");
        var reports = ReportFolder.Open(path);
        var plan = new CampaignPlan(site, new CampaignOptions
        {
            Seed = parsed.GetValue(seed),
            Shard = parsed.GetRequiredValue(shard),
            Pairs = !parsed.GetValue(singles),
            RackDays = parsed.GetValue(days),
            Only = parsed.GetValue(only) is { IsDefault: false } modes ? modes : [],
            QuietYears = Math.Max(0, parsed.GetValue(quiet)),
        });
        using var interruption = new Interruption();
        var watch = Stopwatch.StartNew();
        var outcomes = CampaignScreen.Run(plan, console.Output, interruption.Token);
        var findings = CampaignFindings.Of(
            plan, file.ToString(), CommandOf(parsed, file), outcomes, watch.Elapsed.TotalSeconds, interruption.Token);
        reports.Write(findings);
        CampaignSummary.Print(findings, reports, interruption.Token.IsCancellationRequested, Screen.Over(console.Output));
        return findings.Passed ? ExitCode.AsExpected : ExitCode.AnswerIsNo;
    }

    // Everything that changes what is tried, and nothing else.
    private static string CommandOf(ParseResult parsed, FileInfo file)
    {
        var part = parsed.GetRequiredValue(shard);
        var words = new List<string> { "campaign", file.ToString(), "--seed", $"{parsed.GetValue(seed)}" };
        words.AddRange(part.Of > 1 ? ["--shard", $"{part.Number}/{part.Of}"] : []);
        words.AddRange(parsed.GetValue(singles) ? ["--singles"] : []);
        words.AddRange(parsed.GetValue(days) is { } budget ? ["--days", budget.ToString(CultureInfo.InvariantCulture)] : []);
        words.AddRange(parsed.GetValue(only) is { IsDefaultOrEmpty: false } modes ? ["--only", string.Join('+', modes)] : []);
        return string.Join(' ', words);
    }

    private static Shard? ShardOf(ArgumentResult result)
    {
        var ends = result.Tokens.Count == 1 ? result.Tokens[0].Value.Split('/') : [];
        if (ends.Length == 2 && int.TryParse(ends[0], CultureInfo.InvariantCulture, out var number)
            && int.TryParse(ends[1], CultureInfo.InvariantCulture, out var of) && number >= 1 && number <= of)
        {
            return new Shard(number, of);
        }

        result.AddError("--shard takes a part such as 3/16");
        return null;
    }

    private static ulong SeedOf(ArgumentResult result)
    {
        var written = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
        if (ulong.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        result.AddError("--seed takes a whole number, such as 1");
        return 0;
    }

    private static ImmutableArray<string> ModesOf(ArgumentResult result)
    {
        ImmutableArray<string> written = result.Tokens.Count == 1 ? [.. result.Tokens[0].Value.Split('+')] : [];
        var unknown = written.FirstOrDefault(id => FaultModes.All.All(mode => mode.Id != id));
        if (written.Length is 1 or 2 && unknown is null)
        {
            return written;
        }

        result.AddError(unknown is null
            ? "--only takes one mode, or two joined by +"
            : $"--only names {unknown}, which is no mode; {Near(unknown)}the report of a campaign lists all");
        return [];
    }

    // Whoever writes half of a name gets those that begin or go on like it.
    private static string Near(string written)
    {
        var ids = FaultModes.All.Select(mode => mode.Id).ToList();
        var near = ids.Where(id => written.Length > 0 && id.Contains(written, StringComparison.Ordinal)).Take(MostNear).ToList();
        return near.Count > 0 ? $"there are {string.Join(", ", near)}; "
            : NearestName.Of(written, ids) is { } one ? $"did you mean {one}? "
            : "";
    }
}
