using System.Diagnostics.CodeAnalysis;

namespace RackController.Model;

/// <summary>
/// Says what must be true for the code around it to be right, in every build. A broken invariant is a defect of the
/// program, never of a rack file or a sensor; the scan loop answers it with the safe state.
/// </summary>
public static class Invariant
{
    /// <summary>States that something holds.</summary>
    /// <param name="condition">What must be true.</param>
    /// <param name="what">It in words, for whoever reads the log.</param>
    /// <exception cref="InvariantBrokenException">It does not hold.</exception>
    public static void Holds([DoesNotReturnIf(false)] bool condition, string what)
    {
        if (!condition)
        {
            throw new InvariantBrokenException(what);
        }
    }
}

/// <summary>The program found itself in a state that its authors held to be impossible.</summary>
public sealed class InvariantBrokenException : Exception
{
    /// <summary>Names what does not hold.</summary>
    /// <param name="what">The broken statement.</param>
    public InvariantBrokenException(string what)
        : base(what)
    {
    }

    /// <summary>An unnamed broken statement.</summary>
    public InvariantBrokenException()
    {
    }

    /// <summary>Names what does not hold and what led there.</summary>
    /// <param name="what">The broken statement.</param>
    /// <param name="cause">What led there.</param>
    public InvariantBrokenException(string what, Exception cause)
        : base(what, cause)
    {
    }
}
