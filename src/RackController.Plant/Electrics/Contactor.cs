namespace RackController.Plant;

/// <summary>The contactor upstream of a circuit, closed while its coil rests. The coil is fed by the controller's own supply, so that it
/// works in a brown-out, and draws nothing from the circuit.</summary>
internal sealed class Contactor(CircuitElectrics circuit)
{
    /// <summary>Whether it is told to cut the circuit.</summary>
    public bool IsToldToCut
    {
        get;
        set => Replace(ref field, value);
    }

    /// <summary>Whether it stays closed whatever it is told.</summary>
    public bool IsWelded
    {
        get;
        set => Replace(ref field, value);
    }

    /// <summary>Whether it is open.</summary>
    public bool IsOpen => IsToldToCut && !IsWelded;

    private void Replace(ref bool old, bool value)
    {
        if (old != value)
        {
            old = value;
            circuit.Disturb();
        }
    }
}
