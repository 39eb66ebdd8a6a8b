using NodaTime;
using RackController.Model;

namespace RackController.Notices;

/// <summary>A way by which somebody is told.</summary>
internal interface IWay
{
    /// <summary>What it is called, on page and in log: <c>mail to grower@home.example</c>.</summary>
    string Name { get; }

    /// <summary>The least priority that is told this way.</summary>
    AlarmPriority AtLeast { get; }

    /// <summary>Whether a program is told, and not a person.</summary>
    bool IsForPrograms { get; }

    /// <summary>Sends one message, within half a minute.</summary>
    /// <param name="letter">The message.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <returns>What came of it; failures are an answer and no exception.</returns>
    /// <exception cref="OperationCanceledException">It was ended from outside.</exception>
    Task<SendResult> SendAsync(Letter letter, CancellationToken cancellation);
}

/// <summary>What came of sending a message.</summary>
/// <param name="Fault">Why it did not get through, in one line; null when it did.</param>
/// <param name="IsFinal">Whether another try would fare no better.</param>
/// <param name="RetryAfter">How long the other side wants to be left alone; null where it does not say.</param>
internal sealed record SendResult(string? Fault, bool IsFinal = false, Duration? RetryAfter = null)
{
    /// <summary>It got through.</summary>
    public static SendResult Sent { get; } = new((string?)null);

    /// <summary>It did not, and may the next time.</summary>
    public static SendResult Failed(string fault, Duration? retryAfter = null) => new(fault, false, retryAfter);

    /// <summary>Something happened that should be impossible; it is told as any fault is.</summary>
    public static SendResult Of(Exception defect) =>
        Failed($"a defect of this program ({defect.GetType().Name}): {defect.Message.ReplaceLineEndings(" ")}");

    /// <summary>It was refused for good.</summary>
    public static SendResult Refused(string fault) => new(fault, IsFinal: true);
}
