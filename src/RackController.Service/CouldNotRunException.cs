namespace RackController.Service;

/// <summary>The service cannot run, for a reason that a person can mend; the message is the one line to show.</summary>
public sealed class CouldNotRunException : Exception
{
    /// <summary>Names the reason and what to do.</summary>
    /// <param name="message">One line.</param>
    public CouldNotRunException(string message)
        : base(message)
    {
    }

    /// <summary>An unnamed reason.</summary>
    public CouldNotRunException()
    {
    }

    /// <summary>Names the reason, what to do, and what led there.</summary>
    /// <param name="message">One line.</param>
    /// <param name="cause">What led there.</param>
    public CouldNotRunException(string message, Exception cause)
        : base(message, cause)
    {
    }
}
