namespace RackController.Model;

/// <summary>A line of a GPIO chip. It is used by its offset; one that is called by its name has none until it was found.</summary>
public sealed record GpioLine
{
    /// <summary>What stands before the number of a chip that is meant by its number.</summary>
    public const string NumberedChip = "/dev/gpiochip";

    private readonly int? offset;

    /// <summary>A line by its offset.</summary>
    /// <param name="chip">The chip, as in <see cref="Chip"/>.</param>
    /// <param name="offset">The line's offset on that chip, from 0.</param>
    public GpioLine(string chip, int offset)
        : this(chip, null, offset)
    {
    }

    private GpioLine(string chip, string? name, int? offset)
    {
        Chip = chip;
        Name = name;
        this.offset = offset;
    }

    /// <summary>The label that the kernel gives the chip, which differs neither between boots nor between kernels; its device file, such as
    /// <c>/dev/gpiochip0</c>, whose number may; or the name of a part on a bus.</summary>
    public string Chip { get; }

    /// <summary>What the kernel calls the line; null where the rack file does not call it by its name.</summary>
    public string? Name { get; }

    /// <summary>Its offset on its chip, from 0.</summary>
    /// <exception cref="InvariantBrokenException">It was called by its name, and nobody has looked for it.</exception>
    public int Offset => offset ?? throw new InvariantBrokenException($"line '{Name}' of chip '{Chip}' is used only after it was found");

    /// <summary>A line by its name.</summary>
    /// <param name="chip">The chip, as in <see cref="Chip"/>.</param>
    /// <param name="name">What the kernel calls it.</param>
    public static GpioLine Named(string chip, string name) => new(chip, name, null);

    /// <summary>The same line, found at an offset of its chip.</summary>
    /// <param name="found">The offset.</param>
    public GpioLine FoundAt(int found) => new(Chip, Name, found);

    /// <summary>Which line it is, for people, after the word <c>line</c>: <c>16</c>, <c>'GPIO17'</c>, or <c>17 'GPIO17'</c>.</summary>
    public string Which => Name is null ? $"{Offset}" : offset is null ? $"'{Name}'" : $"{offset} '{Name}'";

    /// <summary>Which line of which chip it is, for people: <c>line 16 of chip 'board'</c>.</summary>
    public override string ToString() => $"line {Which} of chip '{Chip}'";
}
