using System.Collections.Immutable;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>What a flood of one rack does, and what to change where it does not do what it should. Every change that is named was
/// tried on the simulated rack first, and so was all of a way together.</summary>
/// <param name="Survey">The rack as it is.</param>
/// <param name="Ways">Ways to put it right, the easiest first; none when nothing is wrong, or nothing that was tried helps.</param>
public sealed record FloodAdvice(FloodSurvey Survey, ImmutableArray<FloodCure> Ways)
{
    // The second is for whoever cannot do the first; more would be a catalogue.
    private const int MostWays = 2;

    /// <summary>The advice for a rack.</summary>
    /// <param name="site">Its site.</param>
    /// <param name="rack">The rack.</param>
    public static FloodAdvice Of(Site site, Rack rack)
    {
        var survey = FloodSurvey.Of(site, rack);
        var ways = FirstSteps(survey).Select(Completed)
            .OrderBy(way => way.After.Findings.Length).ThenBy(way => way.Effort).Take(MostWays).ToList();
        return new FloodAdvice(survey, [.. ways.Where(way => way.After.Findings.IsEmpty || way == ways[0])]);
    }

    // Problems are put right in their order and no change may bring back an earlier one, so this ends.
    private static FloodCure Completed(FloodCure begun)
    {
        var way = begun;
        while (FirstSteps(way.After).FirstOrDefault() is { } next)
        {
            way = new FloodCure([.. way.Changes, .. next.Changes], next.After) { Effort = way.Effort + next.Effort };
        }

        return way;
    }

    // For each remedy of the first problem, the smallest size that leaves nothing wrong; where none does, the smallest that cures
    // this problem without bringing back an earlier one.
    private static IEnumerable<FloodCure> FirstSteps(FloodSurvey survey)
    {
        if (survey.Findings.IsEmpty)
        {
            yield break;
        }

        var problem = survey.Findings[0].Problem;
        foreach (var remedy in FloodRemedies.For(problem))
        {
            FloodCure? best = null;
            foreach (var change in remedy(survey).TakeWhile(_ => best is not { After.Findings.IsEmpty: true }))
            {
                var tried = new FloodCure([change.Words], FloodSurvey.Of(survey.Site, change.Rack))
                {
                    Effort = (int)change.Effort,
                };
                var cures = tried.After.Findings.All(finding => finding.Problem > problem);
                best = cures && (best is null || tried.After.Findings.IsEmpty) ? tried : best;
            }

            if (best is not null)
            {
                yield return best;
            }
        }
    }
}

/// <summary>One way to put a rack's floods right.</summary>
/// <param name="Changes">What to change, all of it, in order.</param>
/// <param name="After">What a flood does then.</param>
public sealed record FloodCure(ImmutableArray<string> Changes, FloodSurvey After)
{
    /// <summary>What its changes ask of a person, all together.</summary>
    internal int Effort { get; init; }
}
