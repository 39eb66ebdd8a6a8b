using System.Runtime.InteropServices;
using SharpFuzz.Common;

namespace RackController.Fuzz;

/// <summary>Where instrumented code notes which way it went: a map of edges, as AFL++ has it. It has to be there before the first of that
/// code runs; AFL++ brings its own later.</summary>
internal static unsafe class Coverage
{
    private const int MapBytes = 1 << 16;

    private static readonly byte* map = (byte*)NativeMemory.AllocZeroed(MapBytes);

    /// <summary>How often each edge was taken, modulo 256.</summary>
    public static ReadOnlySpan<byte> Map => new(map, MapBytes);

    /// <summary>Begins to note.</summary>
    public static void Begin() => Trace.SharedMem = map;

    /// <summary>Forgets what was noted.</summary>
    public static void Clear()
    {
        new Span<byte>(map, MapBytes).Clear();
        Trace.PrevLocation = 0;
    }
}
