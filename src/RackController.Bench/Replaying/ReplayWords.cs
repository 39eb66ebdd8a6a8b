using System.Collections.Immutable;
using RackController.Control;

namespace RackController.Bench;

/// <summary>How replays say why a load is as it is.</summary>
internal static class ReplayWords
{
    /// <summary>One line for each step that decided.</summary>
    public static ImmutableArray<string> Of(LoadWhy why) =>
        [$"demand: {why.Demand}", .. why.Interlocks.Select(words => $"interlock: {words}"), $"admission: {why.Admission}"];
}
