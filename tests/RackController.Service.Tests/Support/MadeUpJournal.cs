using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service.Tests;

/// <summary>A journal that a test fills with what never happened.</summary>
internal sealed class MadeUpJournal : IDisposable
{
    private readonly JournalFile file;

    public MadeUpJournal(string path)
    {
        Path = path;
        file = JournalFile.Open(path);
    }

    public string Path { get; }

    public static ControlEvent Event(Instant at, EventKind kind, string subject, string what, string because = "of a test") =>
        new(new Moment(MonotonicTime.Zero + (at - Happenings.Noon + Duration.FromDays(4000)), at, true), kind, subject, what, because);

    public void Add(params IReadOnlyList<ControlEvent> events) => file.WriteLasting([new JournalEntry([.. events], null)], [], file.Run);

    public void Add(IReadOnlyList<Sample> samples) => file.WriteQuietly(null, samples, [], file.Run);

    public void Add(IReadOnlyList<DaySum> sums) => file.WriteDays(sums);

    public JournalHistory Read() => JournalHistory.Open(Path);

    public void Dispose() => file.Dispose();
}
