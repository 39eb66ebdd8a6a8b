using Microsoft.CodeAnalysis.CSharp.Syntax;
using RackController.Conventions.Sizes;

namespace RackController.Conventions.Architecture;

/// <summary>Whoever knows where code is knows where its tests are.</summary>
public sealed class MirrorTests
{
    private const string Suffix = ".Tests";

    [Fact]
    public void EveryRoomHasTests() => Verdict.None("A room without tests:",
        from room in Room.All
        where !Syntax.Files.Keys.Any(file => file.StartsWith($"tests/{TestProjectOf(room)}/", StringComparison.Ordinal))
        select room.Assembly);

    [Fact]
    public void TestsStandInTheFolderOfWhatTheyTest() => Verdict.None(
        "A test project has the folders of its room (one with test cases and helpers only may be called as it likes):",
        from room in Room.All
        from file in Syntax.Files
        where file.Key.StartsWith($"tests/{TestProjectOf(room)}/", StringComparison.Ordinal)
        where file.Value.DescendantNodes().OfType<AttributeSyntax>().Any(attribute => attribute.Name.ToString() is "Fact" or "Theory")
        let folder = Path.GetDirectoryName(file.Key)![$"tests/{TestProjectOf(room)}".Length..]
        where !Repository.Has($"src/{room.Assembly}{folder}")
        select file.Key);

    // The executable's tests are called after what it is.
    private static string TestProjectOf(Room room) =>
        room.Name.Length == 0 ? $"RackController.Cli{Suffix}" : $"{room.Assembly}{Suffix}";
}
