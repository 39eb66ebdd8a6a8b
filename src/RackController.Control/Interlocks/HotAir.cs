using RackController.Model;

namespace RackController.Control;

/// <summary>Whether the air at a sensor is too hot: above its limit, and from there on until it has cooled by a margin.</summary>
internal sealed class HotAir(InterlockSite site, Sensor sensor, InterlockLimits limits)
{
    private readonly Limit hot = site.Limit(sensor, limits.AirHotC);
    private readonly Limit cooled = site.Limit(sensor, limits.AirHotC - limits.AirHotReturnK);

    public bool IsHot { get; private set; }

    /// <summary>Looks at the sensor; while its reading is unknown, the last answer stands.</summary>
    /// <returns>Whether the answer is another than before.</returns>
    public bool Look(Facts facts)
    {
        if (!facts.IsKnown(sensor.Id))
        {
            return false;
        }

        var wasHot = IsHot;
        IsHot = facts.IsAbove(wasHot ? cooled : hot);
        return IsHot != wasHot;
    }

    public void Save(MemoryWriter memory, string key) => memory.Put($"{key}/hot", IsHot ? 1 : 0);

    public void Restore(MemoryReader memory, string key) => IsHot = memory.Number($"{key}/hot") == 1;
}
