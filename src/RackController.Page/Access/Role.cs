namespace RackController.Page;

/// <summary>What a person may do; each role may do what those before it may.</summary>
public enum Role
{
    /// <summary>Look.</summary>
    View,

    /// <summary>Ask things of the rack: flood, hold, acknowledge.</summary>
    Operate,

    /// <summary>Change the schedule and who may do what.</summary>
    Configure,
}
