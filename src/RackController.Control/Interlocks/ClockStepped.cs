using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Tells that the wall clock, though it is trusted, was set by more than network time ever corrects between two scans. Hazard: floods and
/// lights follow a wrong date or time for days, because nothing else is wrong. It switches nothing: which of both times is right, a
/// person knows.
/// </summary>
internal sealed class ClockStepped(CauseAndEffectRow row) : Interlock(row, Place.Controller, [])
{
    private static readonly Duration least = Duration.FromMinutes(5);
    private Duration set;

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var (now, before) = (facts.Now, facts.Before);
        var step = now.Wall - before.Wall - (now.Monotonic - before.Monotonic);
        if (now.WallTrusted && before.WallTrusted && IsLarge(step))
        {
            set += step;
            Changed();
        }

        return IsLarge(set);
    }

    public override string Words(ClockFace clock) =>
        $"the wall clock was set {(set > Duration.Zero ? $"on by {Length(set)}" : $"back by {Length(-set)}")}";

    public override void Acknowledged()
    {
        set = Duration.Zero;
        Changed();
    }

    protected override void SaveOwn(MemoryWriter memory)
    {
        memory.Put($"{Key}/set", set);
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        set = memory.Length($"{Key}/set") ?? Duration.Zero;
    }

    private static string Length(Duration length) =>
        length < Duration.FromDays(2) ? length.InWords() : $"{(int)length.TotalDays} days";

    private static bool IsLarge(Duration step) => step >= least || step <= -least;
}
