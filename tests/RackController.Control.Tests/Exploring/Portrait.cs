using System.Globalization;
using System.Text;
using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Exploring;

/// <summary>
/// The state of something in one line, with every timer abstracted to where it lies among the lengths of time that anything is held
/// to, so that a walk comes back to states in which it has been. Whole numbers above a thousand are numbers of floods and are told by
/// how far they lie behind the present one; smaller ones stop counting at ten. Words do not count.
/// </summary>
/// <param name="lengths">The lengths of time that something is held to, shortest first.</param>
internal sealed class Portrait(IReadOnlyList<Duration> lengths)
{
    /// <summary>The number of the flood that a walk begins with.</summary>
    public const long FirstFlood = 1_000_000;

    private const long MostCounted = 10;

    /// <summary>Everything that an object keeps.</summary>
    /// <param name="portrayed">What is portrayed.</param>
    /// <param name="now">When.</param>
    /// <param name="flood">The number of the present flood.</param>
    public string Of(object portrayed, MonotonicTime now, long flood)
    {
        var text = new StringBuilder();
        Add(text, portrayed, now, flood);
        return text.ToString();
    }

    /// <summary>How a length of time compares with those that anything is held to.</summary>
    public int Rank(Duration length) =>
        length < Duration.Zero ? -1 - lengths.Count(each => each <= -length) : lengths.Count(each => each <= length);

    /// <summary>How long until a time, as a rank; negative when it has passed.</summary>
    public string Left(MonotonicTime time, MonotonicTime now) =>
        time == MonotonicTime.Never ? "~" : Rank(time - now).ToString(CultureInfo.InvariantCulture);

    private void Add(StringBuilder text, object? value, MonotonicTime now, long flood)
    {
        switch (value)
        {
            case null or string or Delegate:
                text.Append(value is null ? "-" : "");
                break;
            case MonotonicTime time:
                text.Append(Left(time, now)).Append(';');
                break;
            case Duration length:
                text.Append(Rank(length)).Append(';');
                break;
            case long or int:
                text.Append(Counted(Convert.ToInt64(value, CultureInfo.InvariantCulture), flood)).Append(';');
                break;
            case bool yes:
                text.Append(yes ? '1' : '0');
                break;
            case IFormattable number when value.GetType().IsPrimitive || value.GetType().IsEnum:
                text.Append(number.ToString(null, CultureInfo.InvariantCulture)).Append(';');
                break;
            case Array array:
                text.Append('[');
                foreach (var each in array)
                {
                    Add(text, each, now, flood);
                }

                text.Append(']');
                break;
            default:
                AddFields(text, value, now, flood);
                break;
        }
    }

    private void AddFields(StringBuilder text, object value, MonotonicTime now, long flood)
    {
        if (Twin.NeverChanges(value.GetType()))
        {
            return;
        }

        foreach (var field in Twin.FieldsOf(value.GetType()))
        {
            if (!field.Name.Contains(nameof(Interlock.MemoryVersion), StringComparison.Ordinal))
            {
                Add(text, field.GetValue(value), now, flood);
            }
        }
    }

    private static string Counted(long count, long flood) => count > 1_000
        ? $"f{Math.Clamp(count - flood, -2, 2)}"
        : Math.Min(count, MostCounted).ToString(CultureInfo.InvariantCulture);
}
