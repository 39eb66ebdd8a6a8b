using System.Threading.Channels;

namespace RackController.Live;

/// <summary>Reads keys on a thread of its own, so that the terminal never echoes them into the page. The thread ends with the
/// process: a read from a terminal cannot be called off.</summary>
internal static class KeyReader
{
    /// <summary>Begins to read.</summary>
    /// <returns>Where the keys come out; nothing ever does without a keyboard.</returns>
    public static ChannelReader<char> Start()
    {
        var keys = Channel.CreateBounded<char>(new BoundedChannelOptions(32) { FullMode = BoundedChannelFullMode.DropOldest });
        if (!Console.IsInputRedirected)
        {
            new Thread(() => Read(keys.Writer)) { Name = "keys", IsBackground = true }.Start();
        }

        return keys.Reader;
    }

    private static void Read(ChannelWriter<char> keys)
    {
        try
        {
            while (keys.TryWrite(Console.ReadKey(intercept: true).KeyChar))
            {
            }
        }
        catch (Exception e) when (e is InvalidOperationException or IOException)
        {
            keys.Complete(e);
        }
    }
}
