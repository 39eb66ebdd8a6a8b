namespace RackController.Fuzz;

/// <summary>A reader that is given whatever a fuzzer makes up.</summary>
/// <param name="name">What it is called on the command line, and the folder of its corpus.</param>
internal abstract class Target(string name)
{
    /// <summary>All of them.</summary>
    /// <param name="ground">A folder to write inputs to.</param>
    public static Target[] All(string ground) =>
    [
        new RackFileTarget(ground), new ScenarioTarget(ground), new OrdersTarget(ground), new CropsTarget(ground),
        new JournalTarget(ground),
    ];

    /// <summary>What it is called.</summary>
    public string Name { get; } = name;

    /// <summary>Reads one input. Every exception is a defect.</summary>
    /// <param name="input">The input.</param>
    /// <exception cref="DefectException">The reader answered as it must not.</exception>
    public abstract void Read(byte[] input);
}

/// <summary>A reader answered as it must not.</summary>
internal sealed class DefectException(string message) : Exception(message);
