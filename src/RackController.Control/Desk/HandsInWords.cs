namespace RackController.Control;

/// <summary>What a person is told before hands go into a rack, in the same words wherever they read it: the wiring notes say no less.
/// </summary>
public static class HandsInWords
{
    /// <summary>What to do first: a hold leaves aerator, fans and lights with power, and ends by itself.</summary>
    public const string Plug = "Pull the rack's plug, that of every load and of the aerator too, before hands go into its water or wiring.";

    /// <summary>What a service hold is, and what it is not.</summary>
    public const string Hold = "A service hold only keeps the pump from starting: it makes nothing dead.";

    /// <summary>How to move a float of a rack that keeps its power.</summary>
    public const string Rod = "a dry rod that does not conduct, or a cord";
}
