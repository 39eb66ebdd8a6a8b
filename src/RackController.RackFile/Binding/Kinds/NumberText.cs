using System.Globalization;
using System.Text.RegularExpressions;

namespace RackController.RackFile.Binding.Kinds;

/// <summary>Splits texts such as <c>1.75 in</c> or <c>1 3/4 in</c> into a number and what follows it.</summary>
internal static partial class NumberText
{
    /// <summary>Splits a text that begins with a number.</summary>
    /// <param name="text">The text.</param>
    /// <param name="number">The number.</param>
    /// <param name="rest">What follows the number, without blanks around it.</param>
    public static bool TrySplit(string text, out double number, out string rest)
    {
        var match = Pattern().Match(text);
        number = 0;
        rest = match.Success ? text[match.Length..].Trim() : text;
        if (!match.Success)
        {
            return false;
        }

        number = Value(match, "whole");
        if (match.Groups["top"].Success)
        {
            number += Value(match, "top") / Value(match, "bottom");
        }

        number *= match.Groups["sign"].Value == "-" ? -1 : 1;
        return double.IsFinite(number);
    }

    private static double Value(Match match, string group) => match.Groups[group].Success
        ? double.Parse(match.Groups[group].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture)
        : 0;

    [GeneratedRegex(
        @"^(?<sign>[-+])?(?:((?<whole>\d{1,3}) +)?(?<top>\d{1,3})/(?<bottom>[1-9]\d{0,2})|(?<whole>\d{1,12}(\.\d{1,9})?))(?![\d.,/])",
        RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
