namespace RackController.Model;

/// <summary>How urgent an alarm is: it follows from consequence and time to respond.</summary>
public enum AlarmPriority
{
    /// <summary>In days: nothing suffers yet.</summary>
    Low,

    /// <summary>Within the day: the crop suffers.</summary>
    Medium,

    /// <summary>Within hours: the crop is lost.</summary>
    High,

    /// <summary>At once: water on the floor or danger.</summary>
    Critical,
}
