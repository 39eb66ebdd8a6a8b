namespace RackController.RackFile.Binding;

/// <summary>A place in a text.</summary>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
public readonly record struct Place(int Line, int Column)
{
    /// <summary>The first character.</summary>
    public static Place Start => new(1, 1);
}
