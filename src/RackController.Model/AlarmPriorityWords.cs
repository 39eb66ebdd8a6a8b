namespace RackController.Model;

/// <summary>How urgent an alarm is, in the words of screen, page, rack file and notices.</summary>
public static class AlarmPriorityWords
{
    /// <summary>A priority in one word: <c>critical</c>.</summary>
    /// <param name="priority">A priority.</param>
    /// <exception cref="InvariantBrokenException">It is none of the priorities.</exception>
    public static string InWords(this AlarmPriority priority) => priority switch
    {
        AlarmPriority.Critical => "critical",
        AlarmPriority.High => "high",
        AlarmPriority.Medium => "medium",
        AlarmPriority.Low => "low",
        _ => throw new InvariantBrokenException($"every alarm priority has its word, {priority} too"),
    };
}
