using System.Text;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace RackController.Live;

/// <summary>
/// The terminal while the page is on it: an alternate screen that leaves what was there before untouched. A frame is
/// composed whole and written in one go, so that nothing flickers, and lines are never wrapped by the terminal, whatever its size becomes.
/// </summary>
internal sealed class Terminal : IDisposable
{
    private const string Enter = "\u001b[?1049h\u001b[?25l\u001b[?7l";
    private const string Leave = "\u001b[?7h\u001b[?25h\u001b[?1049l";
    private const string Home = "\u001b[H";
    private const string ClearToEndOfLine = "\u001b[K";
    private const string ClearBelow = "\u001b[J";

    private readonly Stream output = Console.OpenStandardOutput();

    public Terminal() => Write(Enter);

    /// <summary>Columns and rows now; 80 x 24 where the terminal does not say.</summary>
    public static (int Width, int Height) Size
    {
        get
        {
            var (width, height) = (Console.WindowWidth, Console.WindowHeight);
            return width > 0 && height > 0 ? (width, height) : (80, 24);
        }
    }

    /// <summary>Whether the output is a terminal that can be written to in any place. What calls itself dumb, or nothing at
    /// all, would show the commands instead of obeying them.</summary>
    public static bool CanShow =>
        !Console.IsOutputRedirected && Environment.GetEnvironmentVariable("TERM") is { Length: > 0 } and not "dumb";

    /// <summary>Shows a frame.</summary>
    /// <param name="lines">Its lines, no more than fit.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    public void Show(IReadOnlyList<StyledLine> lines, int width, int height)
    {
        var text = new StringWriter();
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.Yes,
            Out = new AnsiConsoleOutput(text),
        });
        console.Profile.Width = width + 1;
        for (var i = 0; i < lines.Count; i++)
        {
            console.Write(new OneLine(lines[i], width));

            // On a full line the cursor rests on the last cell, which clearing would take with it.
            text.Write(lines[i].Width < width ? ClearToEndOfLine : "");
            text.Write(i < lines.Count - 1 ? "\r\n" : "");
        }

        Write(Home + text + (lines.Count < height ? "\r\n" + ClearBelow : ""));
    }

    public void Dispose()
    {
        Write(Leave);
        output.Dispose();
    }

    private void Write(string text)
    {
        output.Write(Encoding.UTF8.GetBytes(text));
        output.Flush();
    }

    private sealed class OneLine(StyledLine line, int width) : Renderable
    {
        protected override IEnumerable<Segment> Render(RenderOptions options, int maxWidth) => line.Render(width);
    }
}
