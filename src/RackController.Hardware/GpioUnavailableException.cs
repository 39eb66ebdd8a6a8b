namespace RackController.Hardware;

/// <summary>
/// A GPIO chip or line cannot be had: it is not there, another process holds it, or the account may not open it. The
/// message is one line for a person: what is wrong, and what to do.
/// </summary>
public sealed class GpioUnavailableException : IOException
{
    /// <summary>Says what is wrong and what to do.</summary>
    /// <param name="message">One line.</param>
    public GpioUnavailableException(string message)
        : base(message)
    {
    }

    /// <summary>An unexplained absence.</summary>
    public GpioUnavailableException()
    {
    }

    /// <summary>Says what is wrong and what to do, and what led there.</summary>
    /// <param name="message">One line.</param>
    /// <param name="cause">What led there.</param>
    public GpioUnavailableException(string message, Exception cause)
        : base(message, cause)
    {
    }
}
