using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>A line as written: by its offset, or by the name that the kernel gives it.</summary>
/// <param name="Offset">Its offset; null where it is named.</param>
/// <param name="Name">Its name; null where it has an offset.</param>
internal sealed record WrittenLine(int? Offset, string? Name)
{
    /// <summary>The line on a chip.</summary>
    public GpioLine On(string chip) => Name is null ? new GpioLine(chip, Offset!.Value) : GpioLine.Named(chip, Name);

    /// <summary>What was written.</summary>
    public override string ToString() => Name ?? Offset!.Value.ToString(CultureInfo.InvariantCulture);
}

/// <summary>A line by its offset or name. What is written as a number is an offset, with quotes or without.</summary>
internal sealed class LineKind : ScalarKind<WrittenLine>
{
    private const int Most = 1023;

    // A field of the kernel's interface has 32 bytes, the last of which is 0 (GPIO_MAX_NAME_SIZE of linux/gpio.h).
    private const int LongestName = 31;

    /// <inheritdoc/>
    public override string Expected => $"a line's offset, a whole number from 0 to {Most}, or its name as `gpioinfo` prints it";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["anyOf"] = new JsonArray(
            new JsonObject { ["type"] = "integer", ["minimum"] = 0, ["maximum"] = Most },
            new JsonObject { ["type"] = "string", ["minLength"] = 1, ["maxLength"] = LongestName, ["examples"] = new JsonArray("GPIO17") }),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out WrittenLine value)
    {
        value = new WrittenLine(null, text);
        if (double.TryParse(text, CultureInfo.InvariantCulture, out _))
        {
            var isWhole = int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var offset);
            value = new WrittenLine(offset, null);
            return !isWhole ? new Misfit("not a whole number") : offset is < 0 or > Most ? new Misfit("out of range") : null;
        }

        return Encoding.UTF8.GetByteCount(text) > LongestName ? new Misfit("longer than any name that the kernel gives")
            : text.Any(char.IsControl) ? new Misfit("with a letter that cannot stand there")
            : text is "~" or "null" ? new Misfit("")
            : null;
    }
}

/// <summary>A chip by its label or number, or a part by its name. What has digits only is a number, with quotes or without.</summary>
internal sealed class ChipKind() : TextKind("a label", "`\"")
{
    private const int MostNumber = 999;

    /// <inheritdoc/>
    public override string Expected => "a chip's label as `gpiodetect` prints it, or its number";

    /// <inheritdoc/>
    public override JsonObject Describe(SchemaWriter schema) => new()
    {
        ["anyOf"] = new JsonArray(
            new JsonObject { ["type"] = "integer", ["minimum"] = 0, ["maximum"] = MostNumber },
            base.Describe(schema)),
    };

    /// <inheritdoc/>
    protected override Misfit? Parse(string text, out string value)
    {
        if (!text.All(char.IsAsciiDigit))
        {
            return base.Parse(text, out value);
        }

        var isNumber = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= MostNumber;
        value = string.Create(CultureInfo.InvariantCulture, $"{GpioLine.NumberedChip}{number}");
        return isNumber ? null : new Misfit("no number of a chip");
    }
}
