namespace RackController.Plant;

/// <summary>One level of one quantity, for whoever wants to know on which side of it the quantity lies now.</summary>
internal sealed class Threshold(LevelWatch watch, WatchedQuantity watched, double reading)
{
    /// <summary>Whether the quantity lies at or above the level.</summary>
    public bool IsReached
    {
        get
        {
            watch.Look();
            return watched.IsAtLeast(reading);
        }
    }
}
