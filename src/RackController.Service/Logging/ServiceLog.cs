using Serilog;
using Serilog.Core;
using Serilog.Events;

namespace RackController.Service;

/// <summary>
/// The operational log: to the console (and so to the journal of systemd) unless a live screen has the console, and to a
/// rolling file. It is for people who look for trouble; the record of what happened is the <see cref="Journal"/>.
/// </summary>
internal sealed class ServiceLog : IDisposable
{
    private const string Template = "{Timestamp:yyyy-MM-ddTHH:mm:ss.fffzzz} {Level:u3} {Message:lj}{NewLine}{Exception}";

    /// <summary>Kept are this many files of at most 10 MB, so that the log never fills the disk.</summary>
    private const int FilesKept = 14;

    private readonly Logger logger;

    private ServiceLog(Logger logger) => this.logger = logger;

    /// <summary>Where to write.</summary>
    public ILogger Log => logger;

    /// <summary>Opens the log.</summary>
    /// <param name="file">Path of the rolling file; the day goes before its extension.</param>
    /// <param name="toConsole">Whether the console is for the log.</param>
    public static ServiceLog Open(string file, bool toConsole)
    {
        var configuration = new LoggerConfiguration()
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .WriteTo.File(
                file, outputTemplate: Template, rollingInterval: RollingInterval.Day, fileSizeLimitBytes: 10_000_000,
                rollOnFileSizeLimit: true, retainedFileCountLimit: FilesKept);
        if (toConsole)
        {
            // systemd stamps each line with the time by itself and reads its level from the prefix.
            configuration = IsJournal
                ? configuration.WriteTo.Sink(new JournalPrefixSink(Console.Out))
                : configuration.WriteTo.Console(outputTemplate: Template);
        }

        return new ServiceLog(configuration.CreateLogger());
    }

    /// <summary>Closes it. A disk that is full keeps the last lines from the file, and nothing else from ending as it should.</summary>
    public void Dispose()
    {
        try
        {
            logger.Dispose();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"the log could not be written to its end: {e.Message}");
        }
    }

    private static bool IsJournal => !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("JOURNAL_STREAM"));
}
