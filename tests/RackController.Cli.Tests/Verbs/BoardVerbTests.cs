using RackController.Cli.Tests.Support;
using RackController.Testing;

namespace RackController.Cli.Tests.Verbs;

public sealed class BoardVerbTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("board-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void TheDoctorFindsNothingWrongWithASimulatedRack()
    {
        // Beside the tests, since a machine may have its temporary files in memory. In a container the disk is an overlay.
        var state = Path.Combine(AppContext.BaseDirectory, "a state folder that nobody makes");
        var answer = Prompt.Run("doctor", Prompt.DemoRack, "--state", state);
        Assert.Equal(0, answer.ExitCode);
        Assert.Contains("sound     rack: simulated", answer.Output, StringComparison.Ordinal);
        Assert.Matches("(4 sound, 0 doubtful|3 sound, 1 doubtful), 0 wrong\n$", answer.Output);
        Assert.False(Directory.Exists(state));
    }

    [Fact]
    public void TheDoctorNamesAChipThatNoMachineHasAndSaysNo()
    {
        var file = Path.Combine(folder.FullName, "rack.yaml");
        File.WriteAllText(
            file, File.ReadAllText(ShippedFiles.PathTo("tests/lab.d/lab-rack.yaml")).Replace("lab-a", "no such chip"));
        var answer = Prompt.Run("doctor", file, "--state", folder.FullName);
        Assert.Equal(1, answer.ExitCode);
        Assert.Contains("wrong     chip 'no such chip': No GPIO chip", answer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AWalkWithoutATerminalIsRefusedInOneLine()
    {
        var answer = Prompt.Run("wiring", Prompt.DemoRack, "--state", folder.FullName);
        Assert.Equal(3, answer.ExitCode);
        Assert.Contains("a walk needs a person at a terminal", answer.Error, StringComparison.Ordinal);
        Assert.Empty(folder.GetFiles());
    }
}
