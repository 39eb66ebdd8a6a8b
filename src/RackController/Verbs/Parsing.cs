using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace RackController.Verbs;

/// <summary>Reads files, dates, times and numbers from the command line.</summary>
internal static class Parsing
{
    // As in scenarios. Beyond, no law says when clocks change, and at the ends of the calendar no day has a next one.
    private const int FirstYear = 2000;
    private const int LastYear = 2100;

    /// <summary>Reads a date or a date and time, or says what to write instead.</summary>
    /// <typeparam name="T">What is read.</typeparam>
    /// <param name="pattern">How it is written.</param>
    /// <param name="dateOf">Its date.</param>
    /// <param name="result">What was written.</param>
    /// <param name="advice">What to write.</param>
    public static T Local<T>(IPattern<T> pattern, Func<T, LocalDate> dateOf, ArgumentResult result, string advice)
        where T : struct
    {
        var parsed = pattern.Parse(Text(result));
        if (parsed.Success && dateOf(parsed.Value).Year is >= FirstYear and <= LastYear)
        {
            return parsed.Value;
        }

        result.AddError(parsed.Success ? $"{advice}, in a year from {FirstYear} to {LastYear}" : advice);
        return default;
    }

    /// <summary>The argument of a verb that takes one file.</summary>
    /// <param name="description">What kind of file.</param>
    public static Argument<FileInfo> File(string description) =>
        new("file") { Description = description, CustomParser = PathOf };

    /// <summary>Reads the path of a file, or says that none is named: an unset variable of the shell is an empty one.</summary>
    /// <param name="result">What was written.</param>
    public static FileInfo? PathOf(ArgumentResult result)
    {
        if (Text(result) is { Length: > 0 } path)
        {
            return new FileInfo(path);
        }

        result.AddError("the name of the file is empty");
        return null;
    }

    /// <summary>Reads a number within bounds, or says what to write instead.</summary>
    /// <param name="least">The least that is allowed.</param>
    /// <param name="most">The most that is allowed.</param>
    /// <param name="result">What was written.</param>
    /// <param name="advice">What to write.</param>
    public static double Number(double least, double most, ArgumentResult result, string advice)
    {
        var isNumber = double.TryParse(Text(result), NumberStyles.Float, CultureInfo.InvariantCulture, out var number);
        if (isNumber && number >= least && number <= most)
        {
            return number;
        }

        result.AddError(advice);
        return default;
    }

    /// <summary>Reads a whole number within bounds, or says what to write instead.</summary>
    /// <param name="least">The least that is allowed.</param>
    /// <param name="most">The most that is allowed.</param>
    /// <param name="result">What was written.</param>
    /// <param name="advice">What to write.</param>
    public static int Whole(int least, int most, ArgumentResult result, string advice)
    {
        var isNumber = int.TryParse(Text(result), NumberStyles.None, CultureInfo.InvariantCulture, out var number);
        if (isNumber && number >= least && number <= most)
        {
            return number;
        }

        result.AddError(advice);
        return default;
    }

    private static string Text(ArgumentResult result) => result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
}
