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

    /// <summary>It is told on, and its circuit carries less than it did, by about as much as it draws.</summary>
    SeemsStill,

    /// <summary>It is told off, and its circuit carries more than it did, by about as much as it draws.</summary>
    SeemsToFlow,

    /// <summary>It is told off, and draws as much as another that flows while everything is told off: it may be this one instead.</summary>
    MayFlow,
}
