namespace RackController.Planning;

/// <summary>The solver's libraries are not there: they come in a package of their own, since they are larger than all the rest.</summary>
public sealed class SolverMissingException : Exception
{
    internal SolverMissingException(DllNotFoundException inner)
        : base("the solver's libraries cannot be found", inner)
    {
    }
}
