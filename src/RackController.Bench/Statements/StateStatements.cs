using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>A load is told to be on or off.</summary>
/// <param name="Load">The load.</param>
/// <param name="State">Which.</param>
public sealed record LoadIsTold(LoadId Load, SwitchState State) : Statement
{
    /// <inheritdoc/>
    public override Truth Judge(IObserved now) => Of(now.IsTold(Load) == (State == SwitchState.On));

    /// <inheritdoc/>
    public override string Words(Site site) => $"{site[Load].Name} is told to be {Word(State == SwitchState.On)}";

    /// <inheritdoc/>
    public override string Seen(IObserved now) => $"{now.Site[Load].Name} is told to be {Word(now.IsTold(Load))}";

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => Vicinity.OfLoad(site, Load).Concerns(site, subject);

    private static string Word(bool on) => on ? "on" : "off";
}

/// <summary>A load really draws power, or really does not.</summary>
/// <param name="Load">The load.</param>
/// <param name="Powered">Which.</param>
public sealed record LoadIsPowered(LoadId Load, bool Powered) : Statement
{
    /// <inheritdoc/>
    public override Truth Judge(IObserved now) => Of(now.IsPowered(Load) == Powered);

    /// <inheritdoc/>
    public override string Words(Site site) => $"{site[Load].Name} {Word(Powered)}";

    /// <inheritdoc/>
    public override string Seen(IObserved now) =>
        $"{now.Site[Load].Name} {Word(now.IsPowered(Load))} and is told to be {(now.IsTold(Load) ? "on" : "off")}";

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => Vicinity.OfLoad(site, Load).Concerns(site, subject);

    private static string Word(bool powered) => powered ? "draws power" : "draws no power";
}

/// <summary>A rack's flood cycle is in a phase.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="Phase">The phase.</param>
public sealed record FloodIs(RackId Rack, FloodPhase Phase) : Statement
{
    /// <inheritdoc/>
    public override Truth Judge(IObserved now) => Of(now.ControllerRuns && now.Flood(Rack) == Phase);

    /// <inheritdoc/>
    public override string Words(Site site) => $"the flood of {site[Rack].Name} is {Word(Phase)}";

    /// <inheritdoc/>
    public override string Seen(IObserved now) => $"the flood of {now.Site[Rack].Name} is {Word(now.Flood(Rack))}";

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => Vicinity.OfWater(Rack).Concerns(site, subject);

    private static string Word(FloodPhase phase) => phase.ToString().ToLowerInvariant();
}

/// <summary>The controller is running, or is not.</summary>
/// <param name="Runs">Which.</param>
public sealed record ControllerRuns(bool Runs) : Statement
{
    /// <inheritdoc/>
    public override Truth Judge(IObserved now) => Of(now.ControllerRuns == Runs);

    /// <inheritdoc/>
    public override string Words(Site site) => Word(Runs);

    /// <inheritdoc/>
    public override string Seen(IObserved now) => Word(now.ControllerRuns);

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => false;

    private static string Word(bool runs) => runs ? "the controller runs" : "the controller is away";
}
