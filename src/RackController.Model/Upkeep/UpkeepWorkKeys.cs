namespace RackController.Model;

/// <summary>The words by which rack file, growing book and programs know works of upkeep.</summary>
public static class UpkeepWorkKeys
{
    /// <summary>The key of a work: <c>screen</c>.</summary>
    /// <param name="work">A work.</param>
    /// <exception cref="InvariantBrokenException">It is none of the works.</exception>
    public static string Key(this UpkeepWork work) => work switch
    {
        UpkeepWork.Screen => "screen",
        UpkeepWork.Flush => "flush",
        UpkeepWork.Reservoir => "reservoir",
        UpkeepWork.Floats => "floats",
        UpkeepWork.Standpipes => "standpipes",
        UpkeepWork.Pump => "pump",
        _ => throw new InvariantBrokenException($"every work of upkeep has its key, {work} too"),
    };
}
