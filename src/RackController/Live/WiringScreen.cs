using System.Collections.Concurrent;
using RackController.Service;
using RackController.Verbs;

namespace RackController.Live;

/// <summary>A walk through the wiring on the terminal. It draws on a thread of its own: a terminal that stands still must not keep a load
/// on.</summary>
internal sealed class WiringScreen : IDisposable
{
    private const string Caution =
        "Mains and water can kill. One load moves at a time and no controller guards the rack meanwhile: keep its plug within reach. "
        + "Pull the plug of every load, of the aerator too, before hands go into water or wiring: its safe state is no dead one.";

    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);

    private readonly string title;
    private readonly System.Threading.Channels.ChannelReader<char> keys = KeyReader.Start();
    private readonly ConcurrentStack<WiringPage> pages = new();
    private readonly ManualResetEventSlim ending = new();
    private readonly Thread thread;

    /// <summary>Takes over the terminal.</summary>
    /// <param name="title">What is walked through.</param>
    public WiringScreen(string title)
    {
        this.title = title;
        thread = new Thread(Draw) { IsBackground = true, Name = "wiring screen" };
        thread.Start();
    }

    /// <summary>Has a page shown soon, and gives the key that was pressed since. Never waits.</summary>
    /// <param name="page">The page.</param>
    public char? Show(WiringPage page)
    {
        pages.Clear();
        pages.Push(page);
        return keys.TryRead(out var key) ? char.ToUpperInvariant(key) : null;
    }

    /// <summary>Lays out a page.</summary>
    /// <param name="title">What is walked through.</param>
    /// <param name="page">The page.</param>
    /// <param name="width">Columns.</param>
    public static IReadOnlyList<StyledLine> Lines(string title, WiringPage page, int width)
    {
        var legend = new StyledLine();
        foreach (var (key, word) in page.Keys)
        {
            legend.Add(key == ' ' ? "" : $"{key}", Tone.Strong).Add($"{(key == ' ' ? "" : " ")}{word}   ", Tone.Quiet);
        }

        return
        [
            new StyledLine().AddColumn($"{title}: wiring", width, Tone.Strong),
            .. Wrapped(Caution, width, Tone.Caution),
            new StyledLine(),
            new StyledLine().Add($"{page.Number} of {page.Count}  ", Tone.Quiet).Add($"{page.Name}   ", Tone.Strong)
                .AddRest(page.Place, width, Tone.Quiet),
            .. Wrapped(page.Words, width, Tone.Plain),
            .. page.Note is { } note ? Wrapped(note, width, Tone.Caution) : [],
            new StyledLine(),
            legend,
        ];
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        ending.Set();
        if (thread.Join(LookEvery * 10))
        {
            ending.Dispose();
        }
    }

    private static IEnumerable<StyledLine> Wrapped(string text, int width, Tone tone) =>
        Wrapping.Lines(text, width).Select(line => new StyledLine().Add(line, tone));

    private void Draw()
    {
        using var terminal = new Terminal();
        while (!ending.Wait(LookEvery))
        {
            if (pages.TryPeek(out var page))
            {
                var (width, height) = Terminal.Size;
                terminal.Show([.. Lines(title, page, width).Take(height)], width, height);
            }
        }
    }
}
