using System.Collections.Immutable;
using RackController.Growing;

namespace RackController.Service;

/// <summary>The works of upkeep that are due, as last looked at. From any thread.</summary>
internal sealed class DueUpkeep
{
    private readonly Lock gate = new();
    private ImmutableArray<UpkeepStatus> works = [];

    /// <summary>Those that are due, what is most so first.</summary>
    public ImmutableArray<UpkeepStatus> Works
    {
        get
        {
            lock (gate)
            {
                return works;
            }
        }

        set
        {
            lock (gate)
            {
                works = value;
            }
        }
    }
}
