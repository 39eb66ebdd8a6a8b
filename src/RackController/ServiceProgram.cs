using System.Diagnostics.CodeAnalysis;

namespace RackController;

/// <summary>
/// The small program that the units of the package run, beside the one that a person runs. It is built of the same sources by
/// <c>-p:ServiceProgram=true</c> and has only what a service needs: the compiler ahead of time leaves out whatever hangs on the rest,
/// and a board keeps that much less in memory.
/// </summary>
internal static class ServiceProgram
{
    private const string Switch = "RackController.ServiceProgram";

    /// <summary>Whether this is that program. A constant to the compiler ahead of time.</summary>
    [FeatureSwitchDefinition(Switch)]
    public static bool IsThis => AppContext.TryGetSwitch(Switch, out var isThis) && isThis;
}
