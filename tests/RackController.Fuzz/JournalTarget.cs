using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Text;
using NodaTime;
using RackController.Bench;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Fuzz;

/// <summary>
/// The journal: whatever lies where it should be, it is opened or put aside, what it remembers is taken up, and what is on record is
/// replayed. An input is the bytes of the database, or, since few of those that are made up are still a database, a part of it: behind a
/// line <c>memory</c> a key and its number on every line, behind a line <c>page</c> the bytes of a page of the record.
/// </summary>
internal sealed class JournalTarget : Target
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 6, 1, 12, 0);
    private static readonly Moment Start = new(MonotonicTime.FromMilliseconds(60_000), Noon, true);
    private static readonly byte[] MemoryLine = "memory\n"u8.ToArray();
    private static readonly byte[] PageLine = "page\n"u8.ToArray();

    private readonly string folder;
    private readonly Site site;

    /// <summary>Prepares a rack that is to remember.</summary>
    /// <param name="ground">A folder to write inputs to.</param>
    public JournalTarget(string ground)
        : base("journal")
    {
        folder = Path.Combine(ground, "state");
        var rack = Repository.File("config/demo-first-rack.yaml");
        site = RackFileReader.Read(rack).Site ?? throw new DefectException($"{rack} is not right");
    }

    /// <inheritdoc/>
    public override void Read(byte[] input)
    {
        if (input.AsSpan().StartsWith(MemoryLine))
        {
            Drive(MemoryIn(Encoding.UTF8.GetString(input.AsSpan(MemoryLine.Length))));
            return;
        }

        if (input.AsSpan().StartsWith(PageLine))
        {
            Replay(new RecordedRun(1, null, input.Length, [input[PageLine.Length..]]));
            return;
        }

        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        var path = Path.Combine(Directory.CreateDirectory(folder).FullName, "journal.db");
        File.WriteAllBytes(path, input);
        ReadRecord(path);
        var opening = JournalOpening.Open(path, Noon);
        using var file = opening.File ?? throw new DefectException($"no journal: {opening.Unusable}");
        file.WriteLasting(
            [new JournalEntry([new ControlEvent(Start, EventKind.Controller, "fuzz", "started", "it is fuzzed")], null)], [], file.Run);
        Drive(opening.Memory);
    }

    private void ReadRecord(string path)
    {
        try
        {
            using var record = JournalRecord.Open(path);
            foreach (var run in record.Runs())
            {
                Replay(run);
            }

            _ = record.Because(Start, "fuzz");
        }
        catch (CouldNotRunException cannot)
        {
            ComplaintRules.HoldOneLine(cannot.Message);
        }
    }

    private void Replay(RecordedRun run) => _ = RunReplay.Of(site, run);

    private void Drive(ControlMemory? memory)
    {
        var control = new RackControl(site, Start, memory);
        var readings = new Readings(site);
        for (var scan = 1; scan <= 3; scan++)
        {
            var by = Duration.FromMinutes(scan);
            var now = new Moment(Start.Monotonic + by, Noon + by, true);
            _ = control.Scan(now, readings, new ScanConditions(IoOutcome.Ok, Duration.Zero), [], new NoEvents());
        }

        _ = control.Why();
        _ = control.DueNext();
        _ = control.Save();
    }

    /// <summary>Eight characters of a number stand for its bytes, so that a fuzzer reaches every number.</summary>
    private static ControlMemory MemoryIn(string text)
    {
        var items = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        foreach (var line in text.Split('\n'))
        {
            if (line.LastIndexOf(' ') is > 0 and var blank)
            {
                var number = line[(blank + 1)..];
                var bytes = new byte[sizeof(long)];
                Encoding.UTF8.GetBytes(number).AsSpan(0, Math.Min(bytes.Length, Encoding.UTF8.GetByteCount(number))).CopyTo(bytes);
                items[line[..blank]] = long.TryParse(number, out var plain) ? plain : BinaryPrimitives.ReadInt64LittleEndian(bytes);
            }
        }

        return new ControlMemory(Noon - Duration.FromHours(1), true, items.ToImmutable());
    }

    private sealed class NoEvents : IEventSink
    {
        public void Take(ControlEvent happened)
        {
        }
    }
}
