using System.Globalization;
using System.Runtime.CompilerServices;

namespace RackController.Control;

/// <summary>The name of a remembered number. Written as <c>$"{Key}/latched"</c> it keeps the two parts, and joins them only when it is
/// read: to write memory down makes no text.</summary>
[InterpolatedStringHandler]
internal struct MemoryName
{
    private string first = "";
    private string rest = "";

    /// <summary>Called by the compiler for an interpolated string, as the methods below are.</summary>
    /// <param name="literalLength">Not used: there is no room to be made.</param>
    /// <param name="formattedCount">Not used, likewise.</param>
    public MemoryName(int literalLength, int formattedCount)
    {
    }

    /// <summary>A name that is one part.</summary>
    /// <param name="name">The name.</param>
    public static implicit operator MemoryName(string name)
    {
        var made = new MemoryName(literalLength: name.Length, formattedCount: 0);
        made.AppendLiteral(name);
        return made;
    }

    public void AppendLiteral(string part) => Append(part);

    public void AppendFormatted(string part) => Append(part);

    public void AppendFormatted(int number) => Append(number.ToString(CultureInfo.InvariantCulture));

    /// <summary>The name in one.</summary>
    public override readonly string ToString() => first + rest;

    private void Append(string part)
    {
        if (first.Length == 0)
        {
            first = part;
            return;
        }

        rest = rest.Length == 0 ? part : rest + part;
    }
}
