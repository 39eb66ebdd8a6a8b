namespace RackController.Control;

/// <summary>What is seen of the water that a pump should move.</summary>
internal enum FillSight
{
    /// <summary>Nobody can tell: the pump has not run, or no sensor could be believed.</summary>
    Unseeable,

    /// <summary>The pump has just started.</summary>
    Awaited,

    /// <summary>It moves.</summary>
    Seen,

    /// <summary>Nothing moves: the pump is dry, clogged or air-bound, or stands still.</summary>
    NotSeen,
}
