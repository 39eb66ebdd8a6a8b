using System.CommandLine.Parsing;
using NodaTime.Text;

namespace RackController.Verbs;

/// <summary>Reads dates and times from the command line.</summary>
internal static class Parsing
{
    /// <summary>Reads one, or says what to write instead.</summary>
    /// <typeparam name="T">What is read.</typeparam>
    /// <param name="pattern">How it is written.</param>
    /// <param name="result">What was written.</param>
    /// <param name="advice">What to write.</param>
    public static T Local<T>(IPattern<T> pattern, ArgumentResult result, string advice)
        where T : struct
    {
        var text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
        var parsed = pattern.Parse(text);
        if (parsed.Success)
        {
            return parsed.Value;
        }

        result.AddError(advice);
        return default;
    }
}
