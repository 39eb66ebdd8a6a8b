using RackController.Model;

namespace RackController.Service;

/// <summary>Told of every good scan, as its last line; a supervisor that hears nothing for too long restarts the process.</summary>
internal interface IWatchdog
{
    /// <summary>A scan was on time and its inputs and outputs worked. Allocates nothing, never waits, never throws.</summary>
    /// <param name="now">The monotonic time of the scan.</param>
    void GoodScan(MonotonicTime now);
}
