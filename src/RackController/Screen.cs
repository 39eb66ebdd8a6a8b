using Spectre.Console;

namespace RackController;

/// <summary>Where a verb prints: a terminal with its width and colours, or plain text for a pipe, a log or a test.</summary>
internal static class Screen
{
    private const int PlainWidth = 100;

    /// <summary>Whether a writer is the terminal of a person.</summary>
    /// <param name="output">A writer.</param>
    public static bool IsTerminal(TextWriter output) => ReferenceEquals(output, Console.Out) && !Console.IsOutputRedirected;

    /// <summary>A console over a writer.</summary>
    /// <param name="output">The writer.</param>
    public static IAnsiConsole Over(TextWriter output)
    {
        var isTerminal = IsTerminal(output);
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(output),
            Ansi = isTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = isTerminal ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = isTerminal ? InteractionSupport.Detect : InteractionSupport.No,
        });
        if (!isTerminal)
        {
            console.Profile.Width = PlainWidth;
        }

        return console;
    }
}
