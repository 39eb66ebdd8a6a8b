namespace RackController.Control;

/// <summary>What is known of the current of one load.</summary>
internal enum Flow
{
    /// <summary>Nothing: it was just switched, its sensor is silent, or it draws too little to be told apart.</summary>
    Unknown,

    /// <summary>It draws current.</summary>
    Flows,

    /// <summary>It draws none.</summary>
    Still,
}
