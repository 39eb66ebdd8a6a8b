using RackController.Model;

namespace RackController.Growing;

/// <summary>What somebody does to a reservoir, in words.</summary>
public static class CareWords
{
    /// <summary>As the beginning of a task: <c>top up</c>.</summary>
    /// <param name="care">What is done.</param>
    public static string Of(ReservoirCare care) => care switch
    {
        ReservoirCare.None => "leave",
        ReservoirCare.TopUp => "top up",
        ReservoirCare.Change => "change",
        ReservoirCare.Flush => "flush and change",
        _ => throw new InvariantBrokenException("whatever is done to a reservoir has its words"),
    };
}
