namespace RackController.Crash;

/// <summary>Counts what held and says what did not.</summary>
internal sealed class Tally
{
    public int Passed { get; private set; }

    public int Failed { get; private set; }

    /// <summary>Counts one thing that must hold.</summary>
    /// <param name="what">The thing.</param>
    /// <param name="complaint">Why it does not hold; null when it does.</param>
    public void Holds(string what, string? complaint)
    {
        Passed += complaint is null ? 1 : 0;
        Failed += complaint is null ? 0 : 1;
        if (complaint is not null)
        {
            Console.WriteLine($"not so: {what}: {complaint}");
        }
    }
}
