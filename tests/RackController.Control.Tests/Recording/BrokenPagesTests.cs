using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Recording;

/// <summary>A page that nobody can have written is refused with what is wrong with it, before anything is made of it.</summary>
public class BrokenPagesTests
{
    private static readonly Moment start = new(MonotonicTime.FromMilliseconds(5_000), Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);

    [Fact]
    public void APageOfAnotherVersionIsRefused() => AssertRefused("it is of version 2", page => page.Put((byte)2));

    [Fact]
    public void APageOfAnotherKindIsRefused() => AssertRefused("it is of no known kind", page => Put(page, PageWriter.Version, 9));

    [Fact]
    public void APageThatEndsInTheMiddleIsRefused() => AssertRefused("it ends in the middle", page => Put(page, PageWriter.Version));

    [Fact]
    public void ANumberWithoutAnEndIsRefused() => AssertRefused(
        "a number has no end", page => Put(page, [PageWriter.Version, (byte)PageKind.Continues, .. Enumerable.Repeat((byte)0x80, 10)]));

    [Fact]
    public void ATimeBeforeTheClockBeganIsRefused() => AssertRefused("a time lies before every clock", page =>
    {
        Put(page, PageWriter.Version, (byte)PageKind.Continues, 0);
        page.Put(-1L);
    });

    [Theory]
    [InlineData(-4_000_001, 0)]
    [InlineData(4_000_001, 0)]
    [InlineData(0, NodaConstants.NanosecondsPerDay)]
    [InlineData(4_000_000, 0)]
    public void ADateBeyondTheCalendarIsRefused(long days, long nanoseconds) => AssertRefused("a time lies beyond every calendar", page =>
    {
        Put(page, PageWriter.Version, (byte)PageKind.Continues, 0);
        page.Put(0L);
        page.Put(days);
        page.Put(nanoseconds);
    });

    [Fact]
    public void AScanAfterTheEndOfTheClockIsRefused() => AssertRefused("a scan lies beyond every clock", page =>
    {
        Begin(page, start);
        page.Put((byte)0);
        page.Put(ulong.MaxValue);
    });

    [Fact]
    public void AScanAfterTheEndOfTheCalendarIsRefused() => AssertRefused("a time lies beyond every calendar", page =>
    {
        Begin(page, start with { Wall = Instant.MaxValue - Duration.FromSeconds(1) });
        page.Put((byte)0);
        page.Put(2_000_000_000UL);
    });

    [Theory]
    [InlineData(PageWriter.FaultSame)]
    [InlineData((byte)7)]
    public void AFaultWithoutWordsIsRefused(byte fault) => AssertRefused("inputs and outputs failed of nothing", page =>
    {
        BeginScan(page, PageWriter.HasConditions);
        page.Put(Duration.Zero);
        page.Put(fault);
    });

    [Fact]
    public void ARequestThatNobodyCanMakeIsRefused() => AssertRefused("somebody asked for something", page =>
    {
        BeginScan(page, PageWriter.HasRequests);
        Put(page, 1, 99);
        page.Put("Ada");
    });

    [Fact]
    public void ATextThatIsNoneIsRefused() => AssertRefused("a text is none", page =>
    {
        BeginScan(page, PageWriter.HasRequests);
        Put(page, 1, 99, 1, 0xff);
    });

    [Theory]
    [InlineData(long.MinValue)]
    [InlineData(long.MaxValue)]
    public void ATierBeyondEveryRackIsRefused(long tier) => AssertRefused("a tier lies beyond every rack", page =>
    {
        BeginScan(page, PageWriter.HasRequests);
        Put(page, 1, 12, 0, 0);
        page.Put(tier);
    });

    [Fact]
    public void MoreThanThereIsIsRefused() => AssertRefused("more is announced than there is", page =>
    {
        BeginScan(page, PageWriter.HasReadings);
        Put(page, 100);
    });

    [Fact]
    public void AReadingOfASensorBeyondEverySiteIsRefused() => AssertRefused("a place lies beyond every list", page =>
    {
        BeginScan(page, PageWriter.HasReadings);
        Put(page, 1);
        page.Put((ulong)ushort.MaxValue + 1);
    });

    [Fact]
    public void AReadingOfNoQualityIsRefused() => AssertRefused("a reading is of no quality", page =>
    {
        BeginScan(page, PageWriter.HasReadings);
        Put(page, 1, 0, 3);
    });

    [Fact]
    public void AReadingOlderThanEveryClockIsRefused() => AssertRefused("a reading is older than every clock", page =>
    {
        BeginScan(page, PageWriter.HasReadings);
        Put(page, 1, 0, 1 << 2);
        page.Put(ulong.MaxValue);
    });

    private static void AssertRefused(string why, Action<ByteWriter> write)
    {
        var page = new ByteWriter();
        write(page);
        var bytes = page.ToArray();
        Assert.StartsWith(why, Assert.Throws<FormatException>(() => RecordedPages.Read(bytes)).Message, StringComparison.Ordinal);
    }

    private static void BeginScan(ByteWriter page, byte has)
    {
        Begin(page, start);
        page.Put(has);
        page.Put(100UL);
    }

    private static void Begin(ByteWriter page, Moment at)
    {
        Put(page, PageWriter.Version, (byte)PageKind.Continues, 0);
        page.Put(at);
    }

    private static void Put(ByteWriter page, params byte[] bytes) => Array.ForEach(bytes, page.Put);
}
