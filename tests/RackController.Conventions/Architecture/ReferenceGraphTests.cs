namespace RackController.Conventions.Architecture;

public sealed class ReferenceGraphTests
{
    private static readonly HashSet<string> PartsOfDotNet =
    [
        .. Directory.EnumerateFiles(Path.GetDirectoryName(typeof(object).Assembly.Location)!, "*.dll")
            .Select(file => Path.GetFileNameWithoutExtension(file)),
    ];

    public static TheoryData<string> Rooms => [.. Room.All.Select(room => room.Assembly)];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void ARoomSeesOnlyTheRoomsThatTheHouseAllows(string assembly)
    {
        var room = Find(assembly);
        var allowed = room.Sees.Select(name => $"RackController.{name}");
        var seen = new BuiltAssembly(assembly).References.Where(IsOurs);
        Verdict.None($"{assembly} may see {string.Join(", ", allowed)} and no other room:", seen.Except(allowed));
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void ARoomUsesOnlyTheLibrariesThatItsWorkNeeds(string assembly)
    {
        var room = Find(assembly);
        var foreign = new BuiltAssembly(assembly).References.Where(name => !IsOurs(name) && !PartsOfDotNet.Contains(name));
        Verdict.None(
            $"{assembly} may use {string.Join(", ", room.Packages)}; add one to Room.All only with a reason in DEVELOPERS.md:",
            foreign.Where(name => !room.MayUse(name)));
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void AProjectFileRefersToNoRoomThatTheHouseForbids(string assembly)
    {
        var room = Find(assembly);
        var project = Repository.Read($"src/{assembly}/{assembly}.csproj");
        var forbidden = Room.All.Where(other => other != room && !room.Sees.Contains(other.Name));
        Verdict.None(
            $"{assembly}.csproj refers to rooms that it may not see:",
            forbidden.Select(other => $"{other.Assembly}.csproj").Where(file => project.Contains($"/{file}\"", StringComparison.Ordinal)));
    }

    [Fact]
    public void EveryRoomOfTheSourceTreeIsInTheHouse()
    {
        var rooms = Repository.Projects
            .Where(file => file.StartsWith("src/", StringComparison.Ordinal))
            .Select(Path.GetFileNameWithoutExtension);
        Assert.Equal(Room.All.Select(room => room.Assembly).Order(StringComparer.Ordinal), rooms.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void EveryProjectIsInTheSolution()
    {
        var solution = Repository.Read("RackController.sln").Replace('\\', '/');
        Verdict.None("RackController.sln lacks a project (dotnet sln add):",
            Repository.Projects.Where(project => !solution.Contains(project, StringComparison.Ordinal)));
    }

    private static Room Find(string assembly) => Room.All.Single(room => room.Assembly == assembly);

    private static bool IsOurs(string assembly) =>
        assembly == "RackController" || assembly.StartsWith("RackController.", StringComparison.Ordinal);
}
