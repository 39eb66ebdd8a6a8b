using Google.OrTools.Sat;

namespace RackController.Planning;

/// <summary>How hard the solver tries.</summary>
/// <param name="Work">An end to each search, in the solver's own measure of work, in which a unit is a second or so of one processor:
/// the same work gives the same plan on every machine, which a clock would not.</param>
public sealed record Effort(double Work)
{
    // They take turns in a fixed order; more of them than a small machine has processors get in each other's way.
    private const int Workers = 2;

    // What has not been found soon is left to the search that simplifies first, and sees sooner that there is nothing to find.
    private const double FirstShare = 0.1;

    // A lamp in two hundred.
    private const double GapShare = 0.005;

    /// <summary>What nobody has to ask for.</summary>
    public static Effort Ordinary { get; } = new(20);

    /// <summary>A solver that stops at the first plan that it comes to, soon and without asking how good it is.</summary>
    internal CpSolver FirstSolver() => new()
    {
        StringParameters = "num_workers:1 random_seed:1 cp_model_presolve:false stop_after_first_solution:true "
            + FormattableString.Invariant($"max_deterministic_time:{Work * FirstShare}"),
    };

    /// <summary>A solver that stops when the work is done, or when the plan is as good as anybody would tell.</summary>
    /// <param name="more">Further parameters of the solver.</param>
    internal CpSolver Solver(string more) => new()
    {
        StringParameters = FormattableString.Invariant(
            $"num_workers:{Workers} interleave_search:true random_seed:1 ")
            + FormattableString.Invariant($"max_deterministic_time:{Work} relative_gap_limit:{GapShare} {more}"),
    };
}
