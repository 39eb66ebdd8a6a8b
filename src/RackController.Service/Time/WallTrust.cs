using NodaTime;

namespace RackController.Service;

/// <summary>Says whether the wall clock may be believed.</summary>
internal interface IWallTrust
{
    /// <summary>Whether a reading of the wall clock may be believed. Allocates nothing.</summary>
    /// <param name="wall">What the clock says.</param>
    bool IsTrusted(Instant wall);

    /// <summary>Looks again at whatever vouches for the clock; called now and then, never by the scan thread.</summary>
    void LookAgain();
}

/// <summary>Trusts whatever the host's clock says: for a simulated rack, which no wrong hour can hurt.</summary>
internal sealed class HostIsTrusted : IWallTrust
{
    public bool IsTrusted(Instant wall) => true;

    public void LookAgain()
    {
    }
}

/// <summary>
/// Trusts the wall clock while the kernel says that something disciplines it, or network time has set it since boot, or a
/// battery-backed clock has; and never when it lies before the last time that the journal saw, since time
/// does not run backwards: a board without a battery wakes up in the past.
/// </summary>
/// <param name="floor">The last trusted time in the journal; null when there is none.</param>
/// <param name="vouches">Whether anything vouches for the clock now.</param>
internal sealed class WallTrust(Instant? floor, Func<bool> vouches) : IWallTrust
{
    /// <summary>No rack ran this program before it was written.</summary>
    private static readonly Instant ProgramWritten = Instant.FromUtc(2026, 1, 1, 0, 0);

    private readonly Instant earliest = floor is { } last ? Instant.Max(last, ProgramWritten) : ProgramWritten;
    private volatile bool vouchedFor = vouches();

    public bool IsTrusted(Instant wall) => vouchedFor && wall >= earliest;

    public void LookAgain() => vouchedFor = vouches();

    /// <summary>Trust in the wall clock of this host, for which its kernel, network time or a battery-backed clock vouches.</summary>
    /// <param name="floor">The last trusted time in the journal; null when there is none.</param>
    public static WallTrust OfHost(Instant? floor) => new(floor, ClockIsVouchedFor);

    /// <summary>Whether something keeps this host's wall clock to network time, or another clock that is right.</summary>
    public static bool IsDisciplined() => KernelIsSynchronised() || File.Exists("/run/systemd/timesync/synchronized");

    /// <summary>Whether the kernel set the wall clock from a battery-backed clock when it started.</summary>
    public static bool SetFromBatteryClock()
    {
        const string clocks = "/sys/class/rtc";
        try
        {
            return Directory.Exists(clocks)
                && Directory.EnumerateDirectories(clocks).Any(clock => ReadsOne(Path.Combine(clock, "hctosys")));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static bool ClockIsVouchedFor() => IsDisciplined() || SetFromBatteryClock();

    private static bool KernelIsSynchronised()
    {
        Span<byte> timex = stackalloc byte[LibC.TimexSize];
        timex.Clear();
        var state = LibC.AdjTimex(ref timex[0]);
        return state is >= 0 and < LibC.TimeError;
    }

    private static bool ReadsOne(string file) => File.Exists(file) && File.ReadAllText(file).Trim() == "1";
}
