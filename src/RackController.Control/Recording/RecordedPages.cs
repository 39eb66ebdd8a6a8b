using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>Reads pages of the record back.</summary>
public static class RecordedPages
{
    /// <summary>Reads a page.</summary>
    /// <param name="body">Its bytes.</param>
    /// <exception cref="FormatException">They are not those of a page that this program knows.</exception>
    public static RecordedPage Read(ReadOnlySpan<byte> body)
    {
        var from = new ByteReader(body);
        if (from.Byte() is not PageWriter.Version and var version)
        {
            throw new FormatException($"it is of version {version}, and this program knows {PageWriter.Version}");
        }

        var kind = (PageKind)from.Byte();
        if (!Enum.IsDefined(kind))
        {
            throw new FormatException("it is of no known kind");
        }

        var number = (long)(from.Unsigned() & long.MaxValue);
        var at = from.Moment();
        var state = kind == PageKind.Continues ? null : State(ref from, at.Monotonic);
        var scans = ImmutableArray.CreateBuilder<RecordedScan>();
        var last = at;
        string? lastFault = null;
        while (!from.IsAtEnd)
        {
            var scan = Scan(ref from, last, lastFault);
            scans.Add(scan);
            last = scan.At;
            lastFault = scan.Conditions.Io.Fault ?? lastFault;
        }

        return new RecordedPage(number, kind, at, state, scans.ToImmutable());
    }

    private static RecordedState State(ref ByteReader from, MonotonicTime now)
    {
        var memory = from.Byte() == 0 ? null : Memory(ref from);
        var commands = ImmutableArray.CreateBuilder<SwitchState>();
        for (var left = from.Count(); left > 0; left--)
        {
            commands.Add(from.Byte() == 0 ? SwitchState.Off : SwitchState.On);
        }

        return new RecordedState(memory, commands.ToImmutable(), Readings(ref from, now));
    }

    private static ControlMemory Memory(ref ByteReader from)
    {
        var (savedAt, isTrusted) = (from.Wall(), from.Byte() != 0);
        var items = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        for (var left = from.Count(); left > 0; left--)
        {
            items[from.Text()] = from.Signed();
        }

        return new ControlMemory(savedAt, isTrusted, items.ToImmutable());
    }

    private static RecordedScan Scan(ref ByteReader from, in Moment last, string? lastFault)
    {
        var has = from.Byte();
        var at = When(ref from, last, (has & PageWriter.HasClock) != 0);
        return new RecordedScan(
            at,
            (has & PageWriter.HasConditions) != 0 ? Conditions(ref from, lastFault) : ScanConditions.Good,
            (has & PageWriter.HasRequests) != 0 ? Requests(ref from) : [],
            (has & PageWriter.HasReadings) != 0 ? Readings(ref from, at.Monotonic) : [],
            (has & PageWriter.HasCommands) != 0 ? Commands(ref from) : [],
            (has & PageWriter.HasEvents) != 0 ? new EventsDigest(from.Index(), from.Word(), from.Word()) : null);
    }

    private static Moment When(ref ByteReader from, in Moment last, bool hasClock)
    {
        var nanoseconds = from.Unsigned();
        if (nanoseconds > (ulong)(long.MaxValue - last.Monotonic.Nanoseconds))
        {
            throw new FormatException("a scan lies beyond every clock");
        }

        var by = Duration.FromNanoseconds((long)nanoseconds);
        var monotonic = last.Monotonic + by;
        if (hasClock)
        {
            return new Moment(monotonic, from.Wall(), from.Byte() != 0);
        }

        return by < Instant.MaxValue - last.Wall
            ? last with { Monotonic = monotonic, Wall = last.Wall + by }
            : throw new FormatException("a time lies beyond every calendar");
    }

    private static ScanConditions Conditions(ref ByteReader from, string? lastFault)
    {
        var lateBy = from.Length();
        var fault = from.Byte() switch
        {
            PageWriter.FaultNone => null,
            PageWriter.FaultSame when lastFault is not null => lastFault,
            PageWriter.FaultNew => from.Text(),
            _ => throw new FormatException("inputs and outputs failed of nothing"),
        };
        return new ScanConditions(new IoOutcome(fault), lateBy);
    }

    private static ImmutableArray<OperatorRequest> Requests(ref ByteReader from)
    {
        var requests = ImmutableArray.CreateBuilder<OperatorRequest>();
        for (var left = from.Count(); left > 0; left--)
        {
            requests.Add(RequestCode.Get(ref from));
        }

        return requests.ToImmutable();
    }

    private static ImmutableArray<RecordedReading> Readings(ref ByteReader from, MonotonicTime now)
    {
        var readings = ImmutableArray.CreateBuilder<RecordedReading>();
        for (var left = from.Count(); left > 0; left--)
        {
            readings.Add(ReadingCode.Get(ref from, now));
        }

        return readings.ToImmutable();
    }

    private static ImmutableArray<RecordedCommand> Commands(ref ByteReader from)
    {
        var commands = ImmutableArray.CreateBuilder<RecordedCommand>();
        for (var left = from.Count(); left > 0; left--)
        {
            var command = from.Index();
            commands.Add(new RecordedCommand(command >> 1, (command & 1) == 0 ? SwitchState.Off : SwitchState.On));
        }

        return commands.ToImmutable();
    }
}
