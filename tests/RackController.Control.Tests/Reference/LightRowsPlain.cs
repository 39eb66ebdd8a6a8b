using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>The rows that compare a light with what is seen of it, each as one plain question to the chronicle.</summary>
internal static class LightRowsPlain
{
    public static Answer LightMissing(Chronicle story, Rack rack, Tier tier, Sensor sensor) => Lasting(story, rack, page =>
        story.Pages[page].Believed[sensor.Id.Index] is { } lux && story.WasOn(tier.Light!.Value, page)
            ? lux < tier.PpfdUmolPerM2S / tier.PpfdPerLux * rack.Limits.LightMissingBelowPercent / 100
            : null);

    public static Answer LightUnasked(Chronicle story, Rack rack, Tier tier, Sensor sensor) => Lasting(story, rack, page =>
        story.WasOn(tier.Light!.Value, page) ? false
        : story.Pages[page].Believed[sensor.Id.Index] is { } lux
            ? lux > tier.PpfdUmolPerM2S / tier.PpfdPerLux * rack.Limits.LightUnaskedAbovePercent / 100
            : null);

    // What is seen at a page: that it is so, that it is not, or nothing.
    private static Answer Lasting(Chronicle story, Rack rack, Func<int, bool?> seen)
    {
        var (told, since) = (false, (MonotonicTime?)null);
        foreach (var page in story.ThisRunBackwards().Reverse())
        {
            var now = story.Pages[page].At.Monotonic;
            var isSo = seen(page);
            since = isSo == true ? since ?? now : null;
            told = isSo == false ? false : told || now >= since + rack.Limits.LightSeenWithin;
        }

        return new Answer(told, told, Latched: false);
    }
}
